import { describe, expect, it } from 'vitest';
import { rowsOf } from '#base/table.ts';
import { pinnedModeEdit } from '#tests/support/pinned-mode.ts';
import { randomRig } from '#tests/support/random-rig.ts';
import { occupancyOf, universesInUse } from '../address/occupancy.ts';
import { SLOTS, type Universe } from '../model/address.ts';
import { applyEdits } from '../model/apply-edits.ts';
import type { Edit } from '../model/edit.ts';
import { modeOf } from '../model/find-mode.ts';
import { fixtureId } from '../model/ids.ts';
import { EMPTY_RIG, type Rig } from '../model/rig.ts';
import { GENERIC_TYPES } from '../type/generic-types.ts';
import { makeSheet } from './make-sheet.ts';
import { SHEET_KINDS, type SheetKind, type Standing } from './sheet.ts';
import { universeSlots } from './universe-slots.ts';

const STANDING: Standing = {
  findings: [],
  say: () => '',
  slots: {
    state: (state) => state,
    does: (uses) => (uses === null ? '?' : uses.map(({ attribute }) => attribute).join('/') || 'hole'),
    byte: ({ byte, of }) => (of === 1 ? '' : String(byte)),
    values: ({ ranges }) => ranges.map(({ from, name }) => `${from} ${name}`).join(';'),
  },
  loads: { rule: '', units: () => '', circuitCautions: [], positionCautions: [] },
  runs: { source: () => '', unit: '', splitter: () => '' },
  cautions: ({ strobe, movingParts }) => [...(strobe ? ['flashes'] : []), ...(movingParts ? ['moves'] : [])],
  cautionFoot: 'last word',
  record: { fact: String, choice: String, noLimit: '', unit: () => '', hire: String, today: '', cautions: [] },
  way: () => '',
};

type Row = Readonly<Record<string, string | number | null | undefined>>;

function rowsOfSheet(kind: SheetKind, rig: Rig): readonly Row[] {
  const sheet = makeSheet(kind, rig, STANDING);
  const rows = [...sheet.rows];
  expect(rows.length).toBe(sheet.length);
  for (const row of rows) expect(row.length).toBe(sheet.columns.length);
  return rows.map((row) => Object.fromEntries(sheet.columns.map((column, at) => [column, row[at]])));
}

const print = (row: Row, columns: readonly string[]) => columns.map((column) => row[column] ?? '-').join(' ');

describe('universe sheet, slot by slot', () => {
  it('[SL1] has every slot of each universe that is used or labelled, in order, with a row for each claimant', () => {
    for (let seed = 1; seed <= 8; seed++) {
      const label: Edit = { kind: 'set-universe', universe: 40 as Universe, label: 'spare' };
      const rig = applyEdits(randomRig(seed, { fixtures: 30, universes: 3 }), [label]);
      const rows = rowsOfSheet('universe-slots', rig);
      const wanted = [...universesInUse(rig), 40 as Universe].flatMap((universe) =>
        universeSlots(rig, occupancyOf(rig, universe)).flatMap(({ slot, state, users }) =>
          (users.length === 0 ? [undefined] : users).map((user) =>
            [universe, slot, state, user?.fixture.unit ?? '-', user?.part ?? '-', user?.own ?? '-'].join(' '),
          ),
        ),
      );
      const columns = ['universe', 'slot', 'state', 'unit', 'break', 'ownSlot'];
      expect(rows.map((row) => print(row, columns))).toEqual(wanted);
      const slots = new Set(rows.map((row) => `${row.universe}:${row.slot}`));
      expect(slots.size).toBe((universesInUse(rig).length + 1) * SLOTS);
      expect(rows.at(-1)).toMatchObject({ universe: 40, label: 'spare', slot: 512, state: 'free', does: null });
    }
  });

  it('gives the first row before it makes the next universe', () => {
    const rig = rigOf([{ address: 1 }, { address: 513 }]);
    let made = 0;
    const slots = { ...STANDING.slots, state: () => String(++made) };
    const [first] = makeSheet('universe-slots', rig, { ...STANDING, slots }).rows;
    expect(first?.slice(0, 4)).toEqual([1, null, 1, '1']);
    expect(made).toBe(1);
  });
});

describe('channel sheet, slot by slot', () => {
  it('[SL4] has every slot of every fixture once, at the address that its claim gives it', () => {
    for (let seed = 1; seed <= 8; seed++) {
      const rig = randomRig(seed, { fixtures: 30, universes: 3 });
      const rows = rowsOfSheet('channel-slots', rig);
      const channels = rows.map(({ channel }) => Number(channel ?? Number.MAX_VALUE));
      expect(channels).toEqual([...channels].sort((a, b) => a - b));
      const placed = rows.filter((row) => row.universe !== null).map((row) => print(row, PLACED));
      const claimed = rowsOfSheet('universe-slots', rig).filter(({ state }) => state !== 'free');
      expect(placed.sort()).toEqual(claimed.map((row) => print(row, PLACED)).sort());
      const asked = [...rowsOf(rig.fixtures)].reduce((sum, fixture) => {
        const mode = modeOf(rig, fixture);
        const starts = fixture.addresses.filter((address) => address !== null).length;
        return sum + (mode ? mode.footprints.reduce((a, b) => a + b, 0) : Math.max(1, starts));
      }, 0);
      expect(rows.length).toBe(asked);
    }
  });

  it('[SL4] says what is not placed, past the end, and not known, as counted by hand', () => {
    const rig = rigOf([
      { channel: 2, address: 511 },
      { channel: 1 },
      { channel: 4, type: 'Ghost' },
      { channel: 3, type: 'Ghost', address: 600, address2: 5 },
    ]);
    const columns = ['channel', 'break', 'ownSlot', 'universe', 'slot', 'does', 'highlight'];
    expect(rowsOfSheet('channel-slots', rig).map((row) => print(row, columns))).toEqual([
      '1 1 1 - - ColorAdd_R 255',
      '1 1 2 - - ColorAdd_G 255',
      '1 1 3 - - ColorAdd_B 255',
      '2 1 1 1 511 ColorAdd_R 255',
      '2 1 2 1 512 ColorAdd_G 255',
      '2 1 3 - - ColorAdd_B 255',
      '3 1 1 2 88 ? -',
      '3 2 1 1 5 ? -',
      '4 - - - - ? -',
    ]);
  });
});

it('every sheet that names a unit has the cautions of its type at its foot, and who has the last word', () => {
  const strobe = GENERIC_TYPES.find(({ model }) => model === 'Strobe');
  if (strobe === undefined) throw new Error('no strobe');
  const edits: Edit[] = [
    pinnedModeEdit(strobe, 'Intensity and rate'),
    {
      kind: 'add-fixture',
      fixture: fixtureId('s'),
      cells: { type: 'Strobe', mode: 'Intensity and rate', address: 7, channel: 1, run: 'A' },
    },
  ];
  const rig = applyEdits(EMPTY_RIG, edits);
  const finding = {
    rule: 'unpatched' as const,
    part: null,
    key: 'k',
    severity: 'note' as const,
    fixtures: [fixtureId('s')],
  };
  for (const kind of SHEET_KINDS) {
    const { foot } = makeSheet(kind, rig, { ...STANDING, findings: [finding] });
    expect(
      foot.filter((line) => line.kind === 'caution'),
      kind,
    ).toEqual([
      { kind: 'caution', type: 'Strobe', text: 'flashes' },
      { kind: 'caution', type: '', text: 'last word' },
    ]);
  }
  expect(makeSheet('findings', rig, STANDING).foot).toEqual([]);
});

const PLACED = [
  'channel',
  'position',
  'unit',
  'type',
  'mode',
  'break',
  'ownSlot',
  'universe',
  'slot',
  'cell',
  'does',
  'byte',
  'default',
  'highlight',
];

/** Units of three slots that are known, unless their cells say another type. */
function rigOf(rows: readonly Readonly<Record<string, string | number>>[]): Rig {
  const rgb = GENERIC_TYPES.find(({ model }) => model === 'RGB');
  if (rgb === undefined) throw new Error('no RGB');
  const adds = rows.map(
    (cells, at): Edit => ({
      kind: 'add-fixture',
      fixture: fixtureId(`f${at}`),
      cells: { type: 'RGB', mode: 'Colours', order: at, ...cells },
    }),
  );
  return applyEdits(EMPTY_RIG, [pinnedModeEdit(rgb, 'Colours'), ...adds]);
}
