import { getRow } from '#base/table.ts';
import { claimsOf } from '#engine/address/claim.ts';
import { ADDRESS_FIELDS, type Field } from '#engine/model/field.ts';
import { modeOf } from '#engine/model/find-mode.ts';
import type { Finding, Severity, SlotRun } from '#engine/model/finding.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';
import type { RowView } from '../live/row-views.ts';
import type { ColumnId } from '../live/rows/column.ts';

/** The gravest finding that speaks of each cell of a row. */
export type FieldMarks = Partial<Readonly<Record<ColumnId, Severity>>>;

const WEIGHT: Readonly<Record<Severity, number>> = { blocker: 3, caution: 2, note: 1 };
const NO_MARKS: FieldMarks = Object.freeze({});

/** Which cells of a row its findings speak of, each with the gravest of them. */
export function fieldMarks(row: RowView): FieldMarks {
  if (row.findings.length === 0) return NO_MARKS;
  const marks: Partial<Record<Field, Severity>> = {};
  for (const finding of row.findings) {
    for (const field of fieldsOf(row, finding)) {
      const known = marks[field];
      if (known === undefined || WEIGHT[finding.severity] > WEIGHT[known]) marks[field] = finding.severity;
    }
  }
  return marks as FieldMarks;
}

function fieldsOf(row: Pick<RowView, 'fixture' | 'mode'>, finding: Finding): readonly Field[] {
  switch (finding.rule) {
    case 'slots-claimed-twice':
    case 'acting-as-one':
      return addressesIn(row, finding.run);
    case 'past-the-end':
      return [ADDRESS_FIELDS[finding.part - 1] ?? 'address'];
    case 'unpatched':
      return [ADDRESS_FIELDS[(finding.part ?? 1) - 1] ?? 'address'];
    case 'unknown-type':
      return ['type'];
    case 'unknown-mode':
      return ['mode'];
    case 'same-place':
    case 'fault-open':
      return ['unit'];
    case 'channel-on-unlike':
    case 'channel-shared':
      return ['channel'];
    case 'unreadable':
      return [finding.cell.field];
    case 'no-slots':
      return ['mode'];
    case 'firmware-mode':
    case 'firmware-wanted':
      return ['firmware'];
    case 'hazard-unsigned':
    case 'library-differs':
      return ['type'];
    case 'circuit-over-rating':
    case 'circuit-over-share':
    case 'circuit-supply-gone':
    case 'circuit-phase':
    case 'circuit-crowded':
    case 'unit-voltage':
    case 'circuit-power-unknown':
    case 'circuit-undescribed':
      return ['circuit'];
    case 'position-over-limit':
    case 'position-weight-unknown':
      return ['position'];
    case 'card-unreadable':
    case 'port-fed-twice':
    case 'number-reserved':
    case 'same-node-address':
    case 'mixed-sub-nets':
    case 'universe-unreached':
    case 'universe-undelivered':
    case 'delivery-unnumbered':
    case 'address-unreadable':
    case 'node-out-of-reach':
    case 'over-link':
    case 'port-beyond':
    case 'cast-unfit':
    case 'port-address-zero':
    case 'run-silent':
    case 'run-source-gone':
    case 'run-source-beyond':
    case 'run-ring':
    case 'run-source-shared':
    case 'splitter-loose':
    case 'line-over-rating':
    case 'line-over-share':
    case 'neutral-over-rating':
    case 'lines-unbalanced':
    case 'volts-unsaid':
    case 'limit-unsigned':
      return [];
    case 'run-overloaded':
    case 'run-open':
    case 'run-mixed':
    case 'run-other-universe':
    case 'run-end-unsaid':
    case 'run-undescribed':
      return ['run'];
    case 'run-too-long':
      return ['cable'];
  }
}

/** The cell of a row that a finding speaks of first. */
export function fieldOfFinding(rig: Rig, row: FixtureId, finding: Finding): Field | undefined {
  const fixture = getRow(rig.fixtures, row);
  return fixture && fieldsOf({ fixture, mode: modeOf(rig, fixture) }, finding)[0];
}

/** The address cells whose slots meet a run. */
function addressesIn({ fixture, mode }: Pick<RowView, 'fixture' | 'mode'>, run: SlotRun): readonly Field[] {
  return claimsOf(fixture, mode).flatMap((claim) => {
    const meets = claim.universe === run.universe && claim.first <= run.last && run.first <= claim.last;
    return meets ? (ADDRESS_FIELDS[claim.part - 1] ?? []) : [];
  });
}
