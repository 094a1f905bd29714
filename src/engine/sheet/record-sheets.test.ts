import { describe, expect, it } from 'vitest';
import { rowsOf as tableRows } from '#base/table.ts';
import { writeSheet } from '#exchange/csv/write-sheet.ts';
import { statedRig } from '#tests/support/stated-rig.ts';
import { NOTHING_STANDS, sheetHeading, sheetPartTitle, standingOf } from '#words/sheets.ts';
import { checkRig } from '../check/check-rig.ts';
import { applyEdits } from '../model/apply-edits.ts';
import { SETUP_KEY } from '../model/card.ts';
import { setCard } from '../model/card-edits.ts';
import type { Edit } from '../model/edit.ts';
import { fixtureId, noteId } from '../model/ids.ts';
import { makeSheet } from './make-sheet.ts';
import type { SheetKind, SheetPart } from './sheet.ts';

const UNITS = statedRig(
  [
    { position: 'Bar 2', unit: '1', circuit: 'C1', type: 'Par' },
    { position: 'Bar 1', unit: '1', circuit: 'C1', type: 'Par' },
    { position: 'bar 1', unit: '2', circuit: 'C1', type: 'Par' },
    { position: 'Bar 1', unit: '3', circuit: 'C1', type: 'Fan' },
  ],
  { Par: { power: 1000, weight: 4.1 }, Fan: { power: 33, weight: null } },
);
const [first, second] = [...tableRows(UNITS.fixtures)].map(({ id }) => id).sort();
const RECORD: readonly Edit[] = [
  ...setCard('venue', SETUP_KEY, { name: 'The Kettle', width: 12.5 }),
  { kind: 'set-position', name: 'Bar 1', order: 1 },
  { kind: 'set-position', name: 'Bridge', order: 2 },
  ...setCard('place', 'bar 1', { position: 'Bar 1', first: 'stage-left-first', trim: 7.2, notes: 'heavy' }),
  ...setCard('limit', 'bridge', { position: 'Bridge', kilograms: 250, person: 'Ona Reeve', on: '2026-11-02' }),
  ...setCard('supply', 'main', { name: 'Main', phases: '3', volts: 230, rating: 63 }),
  ...setCard('circuit', 'c1', { name: 'C1', supply: 'Main', phase: '2', position: 'Bar 1', connector: '16 A blue' }),
  ...setCard('outlet', 'a', { name: 'A', position: 'Bridge', carries: 'dmx', to: 'rack' }),
  ...setCard('node', 'n1', { name: 'Beam', role: 'node', address: '10.0.0.2', ports: 4 }),
  ...setCard('spare', 's1', { type: 'Par', mode: 'M', count: 2, where: 'crate 4' }),
  ...setCard('contact', 'c', { name: 'Ona Reeve', role: 'rigger', phone: '0100 2000' }),
  { kind: 'set-note', note: noteId('n'), text: 'No fog after ten', order: 1 },
  ...setCard('fault', 'f', { unit: second ?? '', what: 'no light', seenBy: 'Bram', seenOn: '2026-11-20' }),
  ...setCard('fault', 'g', { unit: 'gone', called: 'Old 4', what: 'bent', seenOn: '2026-11-01' }),
  ...setCard('fault', 'h', { unit: first ?? '', what: 'dim', seenOn: '2026-11-22', state: 'open' }),
  ...setCard('fault', 'i', { unit: first ?? '', what: 'old', seenOn: '2026-11-02', state: 'mended' }),
  ...setCard('hire', 'j', { item: 'Hazer', count: 2, from: 'Tide Hire', due: '2026-11-24' }),
  ...setCard('hire', 'k', { item: 'Lift', due: '2026-11-25' }),
  ...setCard('hire', 'l', { item: 'Truss', due: '2026-11-01', returned: '2026-11-01' }),
];
const RIG = applyEdits(UNITS, RECORD);

const sheetOf = (kind: SheetKind) => makeSheet(kind, RIG, standingOf(RIG, checkRig(RIG), '2026-11-25'));

function rowsOf(kind: SheetKind, part: SheetPart): string[] {
  const table = sheetOf(kind).tables?.find((each) => each.part === part);
  if (table === undefined) throw new Error(`no ${part}`);
  const rows = [...table.rows];
  expect(rows.length).toBe(table.length);
  for (const row of rows) expect(row.length).toBe(table.columns.length);
  return rows.map((row) => row.map((cell) => (cell === '' || cell === null ? '-' : cell)).join(' | '));
}

describe('the tech pack', () => {
  it('[HO7] has the house, what its positions hold and by whose word, and never a limit that nobody stated', () => {
    expect(rowsOf('tech-pack', 'house')).toContain('Stage width in m | 12.5');
    expect(rowsOf('tech-pack', 'positions')).toEqual([
      'Bar 1 | from stage left | 7.2 | 3 | 8.2 | 1 | - | - | nobody has stated it | - | heavy',
      'Bridge | - | - | 0 | 0 | 0 | 0 | 250 | Ona Reeve | 2026-11-02 | -',
      'Bar 2 | - | - | 1 | 4.1 | 0 | - | - | nobody has stated it | - | -',
    ]);
  });

  it('[HO7] has feeds, data, units that stand, stock, people and notes', () => {
    expect(rowsOf('tech-pack', 'supplies')).toEqual(['Main | 3 | 230 | 63 | -']);
    expect(rowsOf('tech-pack', 'circuits')).toEqual(['C1 | Main | 2 | - | - | Bar 1 | 16 A blue | -']);
    expect(rowsOf('tech-pack', 'outlets')).toEqual(['A | Bridge | DMX | rack | -']);
    expect(rowsOf('tech-pack', 'nodes')).toEqual(['Beam | turns universes into data lines | 10.0.0.2 | 4 | - | -']);
    expect(rowsOf('tech-pack', 'units')).toEqual(['Bar 1 | Par | M | 2', 'Bar 1 | Fan | M | 1', 'Bar 2 | Par | M | 1']);
    expect(rowsOf('tech-pack', 'spares')).toEqual(['Par | M | 2 | crate 4 | -']);
    expect(rowsOf('tech-pack', 'contacts')).toEqual(['Ona Reeve | rigger | 0100 2000 | - | -']);
    expect(rowsOf('tech-pack', 'notes')).toEqual(['No fog after ten']);
  });

  it('[HO7] says at its foot what to mind with electricity and weight, and who has the last word', () => {
    const cautions = sheetOf('tech-pack').foot.flatMap((line) => (line.kind === 'caution' ? [line.text] : []));
    expect(cautions.join(' ')).toMatch(/licensed electrician has the last word.*competent rigger has the last word/);
  });

  it('is one file, each table under its title and its headings', () => {
    const words = { head: ['Head'], heading: sheetHeading, part: sheetPartTitle, nothingStands: NOTHING_STANDS };
    const lines = [...writeSheet(sheetOf('tech-pack'), words)].join('').split('\r\n');
    const at = lines.findIndex((line) => line.startsWith('Spares,'));
    expect(lines[at + 1]).toMatch(/^Spare,Mode,Number,Where it is,Notes/);
    expect(lines[at + 2]).toMatch(/^Par,M,2,crate 4/);
  });
});

describe('the fault list', () => {
  it('[UK10] has every open fault by where its unit hangs, those of units that are gone last', () => {
    expect(rowsOf('fault-list', 'faults')).toEqual([
      'Bar 1 · 1 | - | Par | M | no light | Bram | 2026-11-20',
      'Bar 2 · 1 | - | Par | M | dim | - | 2026-11-22',
      'Old 4, which is gone | - | - | - | bent | - | 2026-11-01',
    ]);
  });

  it('[UK10] has what is hired in and not back, and says in words what is overdue on the day it is made', () => {
    expect(rowsOf('fault-list', 'hires')).toEqual([
      'Hazer | 2 | Tide Hire | 2026-11-24 | overdue | -',
      'Lift | 1 | - | 2026-11-25 | to go back | -',
    ]);
    const undated = makeSheet('fault-list', RIG, standingOf(RIG, []));
    expect([...(undated.tables?.[1]?.rows ?? [])].map((row) => row[4])).toEqual(['no day is said', 'no day is said']);
  });

  it('counts only units that are there among its findings', () => {
    const without = applyEdits(RIG, [{ kind: 'remove-fixture', fixture: fixtureId(String(first)) }]);
    expect(checkRig(without).filter(({ rule }) => rule === 'fault-open').length).toBe(1);
  });
});
