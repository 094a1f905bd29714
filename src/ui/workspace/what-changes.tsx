import { getRow } from '#base/table.ts';
import type { Rig } from '#engine/model/rig.ts';
import type { CellChange, PlanPreview } from '#engine/patch/preview-plan.ts';
import { unitName } from '#words/findings.ts';
import { cellTitle, PREVIEW_WORDS, valueWords } from '#words/sheet.ts';
import type { Previewed } from '../grid/sheet.ts';
import { Table } from '../kit/table.tsx';
import { PreviewFindings } from './preview-findings.tsx';

/** Lines of a list that are shown. */
const MOST = 50;

export interface WhatChangesProps extends Partial<Pick<Previewed, 'costs'>> {
  readonly before: Rig;
  readonly preview: PlanPreview;
}

/** What a plan would change of the units of a rig, and which findings it clears or raises. */
export function WhatChanges({ before, preview, costs }: WhatChangesProps) {
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
