import { readFileSync } from 'node:fs';
import { countingIds } from '#base/random-id.ts';
import { rowsOf } from '#base/table.ts';
import { formatAddress } from '#engine/address/notation.ts';
import type { Grid } from '#engine/list/grid.ts';
import type { Layout } from '#engine/list/layout.ts';
import type { FixtureList } from '#engine/list/read-list.ts';
import { applyEdits } from '#engine/model/apply-edits.ts';
import { ADDRESS_FIELDS, type CellValue } from '#engine/model/field.ts';
import { EMPTY_RIG, type Rig } from '#engine/model/rig.ts';
import { decodeText } from '#exchange/csv/decode-text.ts';
import { guessLayout } from '#exchange/csv/guess-layout.ts';
import { importPlan } from '#exchange/csv/import-plan.ts';
import { readGrid } from '#exchange/csv/read-grid.ts';
import { readList } from '#exchange/csv/read-list.ts';

export interface Imported {
  readonly grid: Grid;
  readonly layout: Layout;
  readonly list: FixtureList;
  readonly rig: Rig;
}

/** A list of `tests/fixtures/lists`, as bytes. */
export function readFixtureFile(name: string): Uint8Array {
  return readFileSync(new URL(`../fixtures/lists/${name}`, import.meta.url));
}

/** Takes the bytes of a list all the way into a rig, guessing everything; throws with the code when they are refused. */
export function importBytes(bytes: Uint8Array, into: Rig = EMPTY_RIG): Imported {
  const decoded = decodeText(bytes);
  if (!decoded.ok) throw new Error(`refused: ${JSON.stringify(decoded.error)}`);
  return importText(decoded.value.text, into);
}

function importText(text: string, into: Rig = EMPTY_RIG): Imported {
  const grid = readGrid(text);
  if (!grid.ok) throw new Error(`refused: ${JSON.stringify(grid.error)}`);
  const layout = guessLayout(grid.value);
  const list = readList(grid.value, layout, into);
  const rig = applyEdits(into, importPlan(into, list, countingIds('i'), into.fixtures.size + 1).edits);
  return { grid: grid.value, layout, list, rig };
}

/**
 * A list line by line: `6: 2:101 Spot/Basic 16 #11 @LX 1.4 (Front light)` for a fixture, `7: total` for anything else, with the
 * codes of its remarks behind it. Two fixtures of one line stand on two rows.
 */
export function printList({ list, rig }: Imported): string[] {
  return list.lines
    .flatMap((line) => {
      const remarks = line.remarks.map(({ code }) => ` !${code}`).join('');
      if (line.kind === 'position') return [`${line.line}: position ${line.position}${remarks}`];
      if (line.kind === 'universe') return [`${line.line}: universe ${line.universe}${remarks}`];
      if (line.kind !== 'fixtures') return [`${line.line}: ${line.kind}${remarks}`];
      return line.fixtures.map((cells, index) => {
        const starts = ADDRESS_FIELDS.map((field) => cells[field]).filter((value) => value !== undefined);
        const words = [
          starts.length === 0 ? '-' : starts.map(printStart).join('+'),
          `${cells.type ?? ''}/${cells.mode ?? ''}`,
          cells.channel === undefined ? '' : `#${JSON.stringify(cells.channel)}`,
          `@${cells.position ?? ''}.${cells.unit ?? ''}`,
          ...(['purpose', 'colour', 'circuit', 'notes'] as const).map((field) =>
            cells[field] === undefined ? '' : `${field[0]}=${cells[field]}`,
          ),
        ];
        return `${line.line}: ${words.filter((word) => word !== '').join(' ')}${index === 0 ? remarks : ''}`;
      });
    })
    .concat([...rowsOf(rig.modes)].map((mode) => `mode ${mode.type}/${mode.mode} ${mode.footprints.join('+')}`).sort());
}

const printStart = (value: CellValue) =>
  typeof value === 'number' ? formatAddress(value as never) : JSON.stringify(value);
