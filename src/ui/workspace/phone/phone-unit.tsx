import { useId, useState } from 'react';
import { isAddressField } from '#engine/model/cell-text.ts';
import type { PersonField } from '#engine/model/field.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import { isLocked } from '#engine/model/locked.ts';
import { findingSentenceFor, unitName } from '#words/findings.ts';
import { COLUMN_WORDS, PHONE_WORDS, PLANS_WORDS } from '#words/sheet.ts';
import { UPKEEP_WORDS } from '#words/upkeep.ts';
import { isWritable, writeCells } from '../../grid/plans/write-cells.ts';
import { moveSelection, selectCell } from '../../grid/selection.ts';
import type { Sheet } from '../../grid/sheet.ts';
import { carryOut, duplicateSelected, removeSelected } from '../../grid/sheet-actions.ts';
import { knownValues } from '../../grid/suggestions.ts';
import { useRow, useSheet } from '../../grid/use-sheet.ts';
import { Button } from '../../kit/button.tsx';
import { LineField } from '../../kit/line-field.tsx';
import { Mark } from '../../kit/mark.tsx';
import type { RowView } from '../../live/row-views.ts';
import { cellText } from '../../live/rows/cell-text.ts';
import { LockPart } from '../../locks/lock-part.tsx';
import { ToHistory } from '../../panels/rig/to-history.tsx';
import { OriginPart } from '../../universes/origin-part.tsx';
import { PathPart } from '../../universes/path-part.tsx';
import { UnitRibbon } from '../../universes/ribbon.tsx';
import { QuickReport } from '../../upkeep/quick-report.tsx';
import { PlanLink } from '../plan-link.tsx';
import { UnitDigits } from './unit-digits.tsx';

export interface PhoneUnitProps {
  readonly sheet: Sheet;
  readonly id: FixtureId;
  readonly onBack: () => void;
}

/** One unit: its address to be read at arm’s length, its cells to be tapped, the next unit within reach of the thumb. */
export function PhoneUnit({ sheet, id, onBack }: PhoneUnitProps) {
  const row = useRow(sheet.store, id);
  const columns = useSheet(sheet, (state) => state.columns);
  const [reporting, setReporting] = useState(false);
  if (row === undefined) return null;
  const go = (lines: 1 | -1) => {
    const { selection } = sheet.state();
    if (selection) sheet.select(moveSelection(sheet.ground(), selection, { lines, columns: 0, how: 'go' }));
  };
  return (
    <div className="flex h-full flex-col">
      <div className="min-h-0 flex-1 overflow-y-auto px-4 py-3">
        <h2 className="text-title">{unitName(row.fixture)}</h2>
        <UnitDigits fixture={row.fixture} />
        <LockPart store={sheet.store} id={id} />
        <ToHistory unit={id} />
        <Findings sheet={sheet} row={row} />
        <OriginPart fixture={row.fixture} />
        <PathPart store={sheet.store} fixture={row.fixture} />
        <div className="pb-3">
          <UnitRibbon
            sheet={sheet}
            row={id}
            onGo={(row) => sheet.select(selectCell({ row, column: 'address' }))}
            onTaken={() => undefined}
          />
        </div>
        <dl className="grid grid-cols-[6rem_1fr] items-center gap-x-3 gap-y-2">
          {columns.filter(isWritable).map((column) => (
            <Cell key={column} sheet={sheet} row={row} column={column} />
          ))}
        </dl>
        {sheet.store.canEdit() ? (
          <div className="flex gap-2 pt-4">
            <Button onClick={() => duplicateSelected(sheet)}>{PLANS_WORDS.duplicate}</Button>
            <Button look="danger" onClick={() => removeSelected(sheet)}>
              {PLANS_WORDS.remove}
            </Button>
          </div>
        ) : null}
      </div>
      <div className="grid grid-cols-3 gap-2 border-t border-rule-strong bg-paper px-4 py-2">
        {sheet.store.canEdit() ? (
          <Button className="col-span-3" onClick={() => setReporting(true)}>
            {UPKEEP_WORDS.report}
          </Button>
        ) : null}
        <Button onClick={() => go(-1)}>{PHONE_WORDS.previous}</Button>
        <Button onClick={onBack}>{PHONE_WORDS.back}</Button>
        <Button look="main" onClick={() => go(1)}>
          {PHONE_WORDS.next}
        </Button>
      </div>
      {reporting ? <QuickReport store={sheet.store} id={id} onClose={() => setReporting(false)} /> : null}
    </div>
  );
}

function Findings({ sheet, row }: { readonly sheet: Sheet; readonly row: RowView }) {
  return (
    <ul className="py-3">
      {row.findings.map((finding) => (
        <li key={finding.key} className="flex flex-wrap items-baseline gap-x-2">
          <Mark severity={finding.severity} />
          <span>{findingSentenceFor(finding, row.fixture.id, sheet.store.rig())}</span>
          <PlanLink sheet={sheet} finding={finding} within="list" />
        </li>
      ))}
    </ul>
  );
}

interface CellProps {
  readonly sheet: Sheet;
  readonly row: RowView;
  readonly column: PersonField;
}

function Cell({ sheet, row, column }: CellProps) {
  const listId = useId();
  const { store } = sheet;
  const { fixture } = row;
  const known = knownValues(store.rig(), fixture, column);
  const write = (text: string) =>
    carryOut(sheet, writeCells(store.rig(), { rows: [fixture.id], columns: [column] }, text));
  return (
    <>
      <dt className="text-soft">{COLUMN_WORDS[column].name}</dt>
      <dd>
        <LineField
          name={COLUMN_WORDS[column].name}
          value={cellText(store.rig(), fixture, column)}
          disabled={!store.canEdit() || (isAddressField(column) && isLocked(fixture))}
          list={known.length > 0 ? listId : undefined}
          inputMode={column.startsWith('address') || column === 'channel' ? 'decimal' : 'text'}
          onWrite={write}
        />
        <datalist id={listId}>
          {known.map((value) => (
            <option key={value} value={value} />
          ))}
        </datalist>
      </dd>
    </>
  );
}
