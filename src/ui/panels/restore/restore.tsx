import { useMemo, useSyncExternalStore } from 'react';
import { systemClock } from '#base/clock.ts';
import {
  allLines,
  bodilyLines,
  countStates,
  followRestoreTasks,
  type RestoreSheet,
  restoreSheet,
} from '#engine/diff/restore.ts';
import type { Rig } from '#engine/model/rig.ts';
import type { RigSummary } from '#wire/rigs.ts';
import { looseSentence, restoreHead, RESTORE_WORDS as words } from '#words/restore.ts';
import { SHEET_WORDS } from '#words/sheet.ts';
import { Message } from '../../kit/message.tsx';
import type { RigStore } from '../../live/rig-store.ts';
import { useCalmRig } from '../../live/use-calm-rig.ts';
import { PrintHead } from '../../print/print-head.tsx';
import { usePrinting } from '../../print/use-printing.ts';
import { Part } from '../part.tsx';
import { MadePart } from '../proposals/made-part.tsx';
import { MindPart } from './mind-part.tsx';
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
  const tasksAt = useMemo(() => followRestoreTasks(house), [house]);
  const sheet = useMemo(
    () => restoreSheet(rig, house, record.at.hash, tasksAt(rig)),
    [rig, house, record.at.hash, tasksAt],
  );
  const lines = useMemo(() => allLines(sheet), [sheet]);
  const shown = useShownLines(lines);
  const { tick, refused } = useTicking(store);
  // Drawn anew on the way to paper, so that it says when that was.
  usePrinting();
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
      <PrintHead lines={restoreHead(summary.name, record.words, systemClock.now())} />
      {writable ? null : <p className="text-soft print:hidden">{SHEET_WORDS.readOnly}</p>}
      <div className="sticky top-0 z-10 -mx-1 bg-paper px-1 py-2 print:static">
        <Progress counts={countStates(bodilyLines(sheet))} />
      </div>
      <RestoreTools sheet={sheet} house={house} rigName={summary.name} record={record.words} shown={shown} />
      {refused === undefined ? null : <Message severity="caution" said={{ what: refused }} />}
      <MindPart sheet={sheet} house={house} />
      <p className="text-soft max-sm:hidden print:hidden">{words.keys}</p>
      <RestoreList sheet={sheet} isShown={shown.isShown} writable={writable} onTick={tick} />
      <Loose sheet={sheet} rigs={[rig, house]} />
      <MadePart rig={summary} record={record} show={rig} house={house} lines={lines} />
    </>
  );
}

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
