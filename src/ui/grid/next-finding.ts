import type { Finding, Severity } from '#engine/model/finding.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import { lineOf } from '../live/rows/lines.ts';
import type { RowOrder } from '../live/rows/row-order.ts';
import { fieldOfFinding } from './field-marks.ts';
import type { CellRef } from './selection.ts';
import type { Sheet } from './sheet.ts';

export interface FindingSearch {
  /** Only findings of this severity; undefined for any. */
  readonly severity: Severity | undefined;
  readonly step: 1 | -1;
}

/** The cell of the next finding down (or up) from the cursor, round the end; undefined when none is shown. */
export function nextFinding(sheet: Sheet, { severity, step }: FindingSearch): CellRef | undefined {
  const { order, columns } = sheet.ground();
  const wanted = sheet.store.findings().filter((finding) => severity === undefined || finding.severity === severity);
  const lines = new Map<number, { readonly finding: Finding; readonly row: FixtureId }>();
  for (const finding of wanted) {
    for (const row of finding.fixtures) {
      const line = lineOf(order, row);
      if (line >= 0 && !lines.has(line)) lines.set(line, { finding, row });
    }
  }
  const cursor = sheet.state().selection?.cursor.row;
  const from = cursor === undefined ? -1 : lineOf(order, cursor);
  const line = nextOf([...lines.keys()], from, step);
  const found = line === undefined ? undefined : lines.get(line);
  return found && { row: found.row, column: columnOf(order, found, columns) };
}

/** The cell of the first shown row that a finding names; undefined when the filter hides them all. */
export function cellOfFinding(sheet: Sheet, finding: Finding): CellRef | undefined {
  const { order, columns } = sheet.ground();
  const row = finding.fixtures.find((id) => lineOf(order, id) >= 0);
  return row && { row, column: columnOf(order, { finding, row }, columns) };
}

function nextOf(lines: readonly number[], from: number, step: 1 | -1): number | undefined {
  const onward = [...lines].sort((a, b) => (a - b) * step);
  return onward.find((line) => (line - from) * step > 0) ?? onward[0];
}

function columnOf(
  order: RowOrder,
  { finding, row }: { readonly finding: Finding; readonly row: FixtureId },
  columns: readonly CellRef['column'][],
): CellRef['column'] {
  const field = fieldOfFinding(order.rig, row, finding);
  return columns.find((column) => column === field) ?? columns[0] ?? 'channel';
}
