import { useMemo, useSyncExternalStore } from 'react';
import { allLines, bodilyLines, countStates, type RestoreSheet, restoreSheet } from '#engine/diff/restore.ts';
import type { Rig } from '#engine/model/rig.ts';
import { restoreCautions } from '#engine/sheet/restore-sheet.ts';
import type { RigSummary } from '#wire/rigs.ts';
import { looseSentence, RESTORE_STANDING, RESTORE_WORDS as words } from '#words/restore.ts';
import { SHEET_WORDS } from '#words/sheet.ts';
import { Message } from '../../kit/message.tsx';
import type { RigStore } from '../../live/rig-store.ts';
import { useCalmRig } from '../../live/use-calm-rig.ts';
import { Cautions } from '../../plant/cautions.tsx';
import { Part } from '../part.tsx';
import { MadePart } from '../proposals/made-part.tsx';
import { Progress } from './progress.tsx';
import { RestoreList } from './restore-list.tsx';
import { RestoreTools } from './restore-tools.tsx';
import type { RestoreRecord } from './use-restore-records.ts';
import { useShownLines } from './use-shown-lines.ts';
import { useTicking } from './use-ticking.ts';

export interface RestoreProps {
  readonly store: RigStore;
  readonly summary: RigSummary;
  readonly record: RestoreRecord;
  /** The rig that this record is. */
  readonly house: Rig;
}

/** What must be put back of an open rig, ticked off by as many as are there. */
export function Restore({ store, summary, record, house }: RestoreProps) {
  const rig = useCalmRig(store);
  const writable = useSyncExternalStore(store.subscribeLink, store.canEdit);
  const sheet = useMemo(() => restoreSheet(rig, house, record.at.hash), [rig, house, record.at.hash]);
  const lines = useMemo(() => allLines(sheet), [sheet]);
  const shown = useShownLines(lines);
  const { tick, refused } = useTicking(store);
  const cautions = useMemo(() => restoreCautions(sheet, house, RESTORE_STANDING), [sheet, house]);
  if (lines.length === 0)
    return (
      <>
        <p className="text-large">{words.nothing}</p>
        <Loose sheet={sheet} rigs={[rig, house]} />
        <MadePart rig={summary} record={record} show={rig} house={house} lines={lines} />
      </>
    );
  return (
    <>
      {writable ? null : <p className="text-soft print:hidden">{SHEET_WORDS.readOnly}</p>}
      <div className="sticky top-0 z-10 -mx-1 bg-paper px-1 py-2 print:static">
        <Progress counts={countStates(bodilyLines(sheet))} />
      </div>
      <RestoreTools sheet={sheet} house={house} rigName={summary.name} record={record.words} shown={shown} />
      {refused === undefined ? null : <Message severity="caution" said={{ what: refused }} />}
      <div className="flex flex-col gap-1">
        <Cautions texts={cautions.flatMap((line) => (line.kind === 'caution' ? [named(line.type, line.text)] : []))} />
        <p className="text-soft max-sm:hidden print:hidden">{words.keys}</p>
      </div>
      <RestoreList sheet={sheet} isShown={shown.isShown} writable={writable} onTick={tick} />
      <Loose sheet={sheet} rigs={[rig, house]} />
      <MadePart rig={summary} record={record} show={rig} house={house} lines={lines} />
    </>
  );
}

const named = (type: string, text: string) => (type === '' ? text : `${type}: ${text}`);

/** Ticks that no line on the sheet is for. */
function Loose({ sheet, rigs }: { readonly sheet: RestoreSheet; readonly rigs: readonly Rig[] }) {
  const { loose, elsewhere } = sheet;
  return (
    <>
      {loose.length === 0 ? null : (
        <Part title={words.loose} about={words.looseAbout}>
          <ul>
            {loose.map((each) => (
              <li key={each.tick.key} className="border-b border-rule py-1">
                {looseSentence(each, rigs)}
              </li>
            ))}
          </ul>
        </Part>
      )}
      {elsewhere === 0 ? null : <p className="text-soft">{words.elsewhere(elsewhere)}</p>}
    </>
  );
}
