import { useEffect, useMemo, useRef, useSyncExternalStore } from 'react';
import { getRow } from '#base/table.ts';
import type { Rig } from '#engine/model/rig.ts';
import { type CellChange, type PlanPreview, previewPlan } from '#engine/patch/preview-plan.ts';
import { unitName } from '#words/findings.ts';
import { cellTitle, PREVIEW_WORDS, SHEET_WORDS, valueWords } from '#words/sheet.ts';
import type { Previewed, Sheet } from '../grid/sheet.ts';
import { carryOut } from '../grid/sheet-actions.ts';
import { useSheet } from '../grid/use-sheet.ts';
import { Button } from '../kit/button.tsx';
import { Dialog } from '../kit/dialog.tsx';
import { Table } from '../kit/table.tsx';
import { PreviewFindings } from './preview-findings.tsx';

/** Lines of a list that are shown. */
const MOST = 50;

/** A plan before it is applied: what moves from where to where, and which findings it clears or raises. */
export function PreviewDialog({ sheet }: { readonly sheet: Sheet }) {
  const previewed = useSheet(sheet, (state) => state.preview);
  return previewed === undefined ? null : <LookAt sheet={sheet} previewed={previewed} />;
}

function LookAt({ sheet, previewed }: { readonly sheet: Sheet; readonly previewed: Previewed }) {
  const { store } = sheet;
  const { plan, says, costs } = previewed;
  const rig = useSyncExternalStore(store.subscribe, store.rig);
  const preview = useMemo(() => previewPlan(rig, plan), [rig, plan]);
  const leave = () => sheet.set({ preview: undefined });
  const apply = () => {
    leave();
    carryOut(sheet, plan);
  };
  const nothing = preview.rig === rig;
  const main = useRef<HTMLButtonElement>(null);
  useEffect(() => main.current?.focus(), []);
  const answers = (
    <>
      <Button onClick={leave}>{SHEET_WORDS.leave}</Button>
      <Button ref={main} look="main" onClick={apply} disabled={nothing}>
        {SHEET_WORDS.apply}
      </Button>
    </>
  );
  return (
    <Dialog title={PREVIEW_WORDS.title(plan.name)} onClose={leave} answers={answers}>
      {says.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {nothing ? <p>{PREVIEW_WORDS.nothing}</p> : <WhatChanges before={rig} preview={preview} costs={costs} />}
    </Dialog>
  );
}

interface WhatChangesProps extends Pick<Previewed, 'costs'> {
  readonly before: Rig;
  readonly preview: PlanPreview;
}

function WhatChanges({ before, preview, costs }: WhatChangesProps) {
  const { changes, fixturesAdded, fixturesRemoved, findingsAdded, findingsRemoved } = preview;
  const changed = changes.filter(({ field }) => field !== 'order');
  const same = findingsAdded.length + findingsRemoved.length === 0;
  return (
    <>
      {fixturesAdded.length === 0 ? null : <p>{PREVIEW_WORDS.added(fixturesAdded.length)}</p>}
      {fixturesRemoved.length === 0 ? null : <p>{PREVIEW_WORDS.removed(fixturesRemoved.length)}</p>}
      {changed.length === 0 ? null : <Changes rig={before} changes={changed} costs={costs} />}
      {same ? <p className="text-soft">{PREVIEW_WORDS.same}</p> : null}
      <PreviewFindings title={PREVIEW_WORDS.cleared(findingsRemoved.length)} findings={findingsRemoved} rig={before} />
      <PreviewFindings title={PREVIEW_WORDS.raised(findingsAdded.length)} findings={findingsAdded} rig={preview.rig} />
    </>
  );
}

interface ChangesProps extends Pick<Previewed, 'costs'> {
  readonly rig: Rig;
  readonly changes: readonly CellChange[];
}

function Changes({ rig, changes, costs }: ChangesProps) {
  const shown = changes.slice(0, MOST);
  return (
    <>
      <p>{PREVIEW_WORDS.changes(changes.length)}</p>
      <Table
        caption={PREVIEW_WORDS.changes(changes.length)}
        rowName="unit"
        keyOf={({ fixture, field }: CellChange) => `${fixture} ${field}`}
        columns={[
          { key: 'unit', heading: PREVIEW_WORDS.unit, cell: ({ fixture }) => unitName(getRow(rig.fixtures, fixture)) },
          { key: 'cell', heading: PREVIEW_WORDS.cell, cell: ({ field }) => cellTitle(field) },
          { key: 'from', heading: PREVIEW_WORDS.from, cell: ({ field, from }) => valueWords(field, from) },
          { key: 'to', heading: PREVIEW_WORDS.to, cell: ({ field, to }) => <b>{valueWords(field, to)}</b> },
          ...(costs === undefined
            ? []
            : [
                {
                  key: 'cost',
                  heading: PREVIEW_WORDS.cost,
                  cell: ({ fixture }: CellChange) => costs.get(fixture) ?? '',
                },
              ]),
        ]}
        rows={shown}
      />
      {changes.length > MOST ? <p className="text-soft">{PREVIEW_WORDS.more(changes.length - MOST)}</p> : null}
    </>
  );
}
