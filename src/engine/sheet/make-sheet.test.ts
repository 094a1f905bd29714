import { describe, expect, it } from 'vitest';
import type { Universe } from '../model/address.ts';
import { applyEdits } from '../model/apply-edits.ts';
import type { Edit } from '../model/edit.ts';
import type { Cells, Fixture } from '../model/fixture.ts';
import { fixtureId } from '../model/ids.ts';
import { EMPTY_RIG, type Rig } from '../model/rig.ts';
import { makeSheet } from './make-sheet.ts';
import { SHEET_KINDS, type SheetKind } from './sheet.ts';

const SLOTS = { state: () => '', does: () => '', byte: () => '', values: () => '' };
const LOADS = {
  rule: '',
  units: unitsOf,
  circuitCautions: ['draws'],
  positionCautions: ['weighs'],
};
const RUNS = { source: () => '', unit: '', splitter: () => '' };
const NOTHING = {
  findings: [],
  say: () => '',
  slots: SLOTS,
  loads: LOADS,
  runs: RUNS,
  record: {
    fact: (of: string) => of,
    choice: (word: string) => word,
    noLimit: 'nobody',
    unit: ({ called }: { readonly called: string }) => called,
    hire: (state: string) => state,
    today: '2026-11-25',
    cautions: [],
  },
  cautions: () => [],
  cautionFoot: '',
  way: () => '',
};

function unitsOf(fixtures: readonly Fixture[]): string {
  return fixtures.map(({ unit }) => unit).join(' ');
}

function rigOf(rows: readonly Cells[], more: readonly Edit[] = []): Rig {
  const adds = rows.map(
    (cells, i): Edit => ({ kind: 'add-fixture', fixture: fixtureId(`f${i}`), cells: { ...cells, order: i } }),
  );
  return applyEdits(EMPTY_RIG, [...more, ...adds]);
}

/** Rows of a sheet as text, the cells of the wanted columns joined by a blank, `-` for an empty one. */
function rowsOf(kind: SheetKind, rig: Rig, columns: readonly string[]): string[] {
  const sheet = makeSheet(kind, rig, NOTHING);
  const at = columns.map((column) => (sheet.columns as readonly string[]).indexOf(column));
  return [...sheet.rows].map((row) => at.map((i) => row[i] ?? '-').join(' '));
}

describe('sheets', () => {
  // Natural order of units: common practice (check value 174).
  it('patch: positions in the order of the rig, the others by name, no position last; units in natural order', () => {
    const place = (position: string) => ['10', '4A', '2', '4'].map((unit) => ({ position, unit }));
    const rig = rigOf(
      [
        ...place('').slice(0, 1),
        ...place('Wing 10').slice(0, 1),
        ...place('Wing 9').slice(0, 1),
        ...place('LX 2').slice(0, 1),
        ...place('lx  1'),
      ],
      [
        { kind: 'set-position', name: 'LX 1', order: 1 },
        { kind: 'set-position', name: 'LX 2', order: 2 },
      ],
    );
    expect(rowsOf('patch', rig, ['position', 'unit'])).toEqual([
      'lx  1 2',
      'lx  1 4',
      'lx  1 4A',
      'lx  1 10',
      'LX 2 10',
      'Wing 9 10',
      'Wing 10 10',
      ' 10',
    ]);
  });

  it('patch: has the columns of breaks that are in use, and prints footprints per break', () => {
    const mode: Edit = { kind: 'set-mode', type: 'Bar', mode: 'Two', footprints: [10, 20] };
    const rig = rigOf([{ type: 'Bar', mode: 'Two', address: 613, address2: 1 }], [mode]);
    expect(rowsOf('patch', rig, ['footprint', 'universe', 'slot', 'universe2', 'slot2'])).toEqual(['10+20 2 101 1 1']);
    expect(makeSheet('patch', rig, NOTHING).columns).not.toContain('slot3');
  });

  it('channels: by channel, those without one at the end', () => {
    const rig = rigOf([
      { unit: 'a', channel: 20 },
      { unit: 'b' },
      { unit: 'c', channel: 3 },
      { unit: 'd', channel: 'x' },
    ]);
    expect(rowsOf('channels', rig, ['channel', 'unit'])).toEqual(['3 c', '20 a', '- b', 'x d']);
  });

  it('universes: one row per occupied run, by universe and slot, cut at 512 with the footprint in full', () => {
    const edits: Edit[] = [
      { kind: 'set-mode', type: 'Bar', mode: 'Two', footprints: [10, 20] },
      { kind: 'set-universe', universe: 2 as Universe, label: 'Balcony' },
    ];
    const rig = rigOf(
      [
        { unit: '1', type: 'Bar', mode: 'Two', address: 1020, address2: 3 },
        { unit: '2', type: 'Ghost', mode: '?', address: 1 },
        { unit: '3', type: 'Bar', mode: 'Two' },
      ],
      edits,
    );
    expect(rowsOf('universes', rig, ['universe', 'label', 'first', 'last', 'footprint', 'unit', 'break'])).toEqual([
      '1 - 1 1 1 2 1',
      '1 - 3 22 20 1 2',
      '2 Balcony 508 512 10 1 1',
    ]);
  });

  it('every row is as wide as the columns, and rows can be read again', () => {
    const rig = rigOf([
      { unit: '1', address: 1 },
      { unit: '2', channel: 4 },
    ]);
    const finding = {
      rule: 'unpatched' as const,
      part: null,
      key: 'k',
      severity: 'note' as const,
      fixtures: [fixtureId('f1')],
    };
    for (const kind of SHEET_KINDS) {
      const sheet = makeSheet(kind, rig, { ...NOTHING, findings: [finding], say: () => 'said' });
      const rows = [...sheet.rows];
      expect(rows.length).toBe(sheet.length);
      expect([...sheet.rows]).toEqual(rows);
      for (const row of rows) expect(row.length).toBe(sheet.columns.length);
      const foot = kind === 'findings' ? [] : [{ kind: 'finding', severity: 'note', text: 'said' }];
      expect(sheet.foot.filter((line) => line.kind === 'finding')).toEqual(foot);
    }
  });
});
