import { describe, expect, it } from 'vitest';
import { countingIds } from '#base/random-id.ts';
import { type Rng, seededRng } from '#base/rng.ts';
import type { Grid } from '#engine/list/grid.ts';
import type { Layout } from '#engine/list/layout.ts';
import { MEANINGS } from '#engine/list/meaning.ts';
import type { FixtureList, ListLine } from '#engine/list/read-list.ts';
import { applyEdits } from '#engine/model/apply-edits.ts';
import { CELL_LIMIT } from '#engine/model/field.ts';
import { EMPTY_RIG } from '#engine/model/rig.ts';
import { decodeText } from '#exchange/csv/decode-text.ts';
import { guessLayout, layoutWithHeading, withMeaning } from '#exchange/csv/guess-layout.ts';
import { importPlan, linesAlreadyIn } from '#exchange/csv/import-plan.ts';
import { readGrid } from '#exchange/csv/read-grid.ts';
import { readList } from '#exchange/csv/read-list.ts';
import { hostileText } from '#tests/support/hostile-text.ts';
import { readFixtureFile } from '#tests/support/import-bytes.ts';

const SEEDS = [
  'ropewalk-spring.csv',
  'ropewalk-autumn.csv',
  'quantities.csv',
  'teatro-ponte.txt',
  'haus-west.csv',
  'tables.txt',
  'sala-sur.csv',
];

describe('any bytes at all', () => {
  it('are read or refused, never thrown at, and every line and cell is accounted for', () => {
    const rng = seededRng(71);
    const outcomes = { read: 0, refused: 0 };
    for (let round = 0; round < 300; round++) {
      const bytes = round % 3 === 0 ? randomBytes(rng) : mutated(rng, readFixtureFile(rng.pick(SEEDS)));
      const decoded = decodeText(bytes);
      const grid = decoded.ok ? readGrid(decoded.value.text) : decoded;
      if (!grid.ok) {
        outcomes.refused += 1;
        continue;
      }
      outcomes.read += 1;
      for (const layout of layoutsOf(rng, grid.value))
        checkAccount(grid.value, layout, readList(grid.value, layout, EMPTY_RIG));
    }
    expect(outcomes.read).toBeGreaterThan(100);
    expect(outcomes.refused).toBeGreaterThan(25);
  });
});

function layoutsOf(rng: Rng, grid: Grid): readonly Layout[] {
  const guess = guessLayout(grid);
  const pointed = layoutWithHeading(grid, rng.int(3) === 0 ? null : rng.int(grid.rows.length));
  const column = rng.int(grid.width);
  return [guess, { ...pointed, blankPosition: 'as-above' }, withMeaning(guess, column, rng.pick(MEANINGS))];
}

function randomBytes(rng: Rng): Uint8Array {
  const size = rng.int(rng.pick([4, 60, 3000]));
  if (rng.int(2) === 0) return Uint8Array.from({ length: size }, () => rng.int(256));
  const cells = Array.from({ length: 1 + rng.int(60) }, () => hostileText(rng) + rng.pick([',', ';', '\t', '\n', '"']));
  return Buffer.from(cells.join(''), rng.pick(['utf8', 'latin1', 'utf16le'] as const));
}

function mutated(rng: Rng, bytes: Uint8Array): Uint8Array {
  const all = [...bytes];
  for (let i = rng.int(30); i > 0; i--) {
    const at = rng.int(all.length);
    const dice = rng.int(4);
    if (dice === 0) all.splice(at, rng.int(40));
    else if (dice === 1) all.splice(at, 0, ...Buffer.from(hostileText(rng)));
    else if (dice === 2) all[at] = rng.pick([34, 44, 59, 9, 10, 13, 0, 255, 45]);
    else all.splice(at, 0, ...all.slice(rng.int(all.length), rng.int(all.length)));
  }
  return Uint8Array.from(all.slice(0, 40_000));
}

/** Every row is one line, and says all its cells or makes fixtures; the columns count what the fixture lines hold. */
function checkAccount(grid: Grid, layout: Layout, list: FixtureList): void {
  expect(list.lines.map((line) => line.line)).toEqual(grid.rows.map((row) => row.line));
  const filled = layout.columns.map(() => 0);
  for (const [index, line] of list.lines.entries()) {
    const cells = (grid.rows[index]?.cells ?? []).map((cell) => cell.trim());
    if (line.kind === 'fixtures') checkKept(cells, layout, line);
    else for (const cell of cells) expect(line.text).toContain(cell);
    if (line.kind === 'fixtures')
      for (const [column, cell] of cells.entries()) filled[column] = (filled[column] ?? 0) + (cell === '' ? 0 : 1);
  }
  expect(list.columns.map((column) => column.filled)).toEqual(filled);
  const fixtures = list.lines.flatMap((line) => (line.kind === 'fixtures' ? line.fixtures : []));
  expect(list.fixtures).toBe(fixtures.length);
  const rig = applyEdits(EMPTY_RIG, importPlan(EMPTY_RIG, list, countingIds('i'), 1).edits);
  expect(rig.fixtures.size).toBe(fixtures.length);
  expect(linesAlreadyIn(EMPTY_RIG, list).size).toBe(0);
}

// Meanings whose cells stand in the fixture word for word.
const KEPT = new Set<string>(['position', 'mode', 'purpose', 'colour', 'circuit', 'notes', 'keep-in-notes']);

/** A filled cell of such a column is in the fixture, or remarked on. */
function checkKept(cells: readonly string[], layout: Layout, line: Extract<ListLine, { kind: 'fixtures' }>): void {
  const said = JSON.stringify([line.fixtures, line.remarks]);
  for (const [column, cell] of cells.entries()) {
    const kept = KEPT.has(layout.columns[column]?.meaning ?? '') && cell.length <= CELL_LIMIT;
    if (kept) expect(said).toContain(JSON.stringify(cell).slice(1, -1));
  }
}
