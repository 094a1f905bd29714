import { absolute } from '#engine/model/address.ts';
import type { Edit, Plan } from '#engine/model/edit.ts';
import type { Cells } from '#engine/model/fixture.ts';
import { fixtureId, noteId } from '#engine/model/ids.ts';

/** The demo's show rig: an invented show of 152 fixtures by invented makers, with a few honest findings in it. */
export const DEMO_RIG = {
  id: 'demo-lantern-tide',
  crew: 'demo-touring',
  name: 'The Lantern Tide',
  kind: 'show',
} as const;

const MODES: readonly (readonly [type: string, mode: string, footprints: readonly number[]])[] = [
  ['Umberforge Pilot 19 wash', 'Short 12', [12]],
  ['Umberforge Pilot 19 wash', 'Full 24', [24]],
  ['Stoat & Ravel Halyard spot', 'Standard 22', [22]],
  ['Stoat & Ravel Halyard spot', 'Extended 34', [34]],
  ['Penhallow Tideline batten', 'Four cells 20', [20]],
  ['Penhallow Tideline batten', 'Twelve cells 52', [52]],
  ['Penhallow Lodestone profile', 'Direct 5', [5]],
  ['Penhallow Lodestone profile', 'Colour 9', [9]],
  ['House 1 kW fresnel', 'Dimmer', [1]],
  ['House par with scroller', 'Dimmer and scroller', [1, 1]],
  ['Umberforge Breakwater strobe', 'Seven slots', [7]],
  ['Fennimore Fogbank hazer', 'Three slots', [3]],
];

interface Group {
  readonly position: string;
  readonly units: number;
  readonly type: string;
  readonly mode: string;
  readonly channel: number;
  /** Start addresses, break by break: universe, first slot, step. */
  readonly at: readonly (readonly [universe: number, slot: number, step: number])[];
  readonly purpose: string;
  readonly colour?: string;
  readonly circuit: string;
}

const LODESTONE = 'Penhallow Lodestone profile';
const PILOT = 'Umberforge Pilot 19 wash';
const HALYARD = 'Stoat & Ravel Halyard spot';
const FRESNEL = 'House 1 kW fresnel';

const GROUPS: readonly Group[] = [
  {
    position: 'Front bridge',
    units: 16,
    type: LODESTONE,
    mode: 'Colour 9',
    channel: 1,
    at: [[1, 1, 9]],
    purpose: 'Front light',
    circuit: 'FB',
  },
  {
    position: 'Second bridge',
    units: 12,
    type: LODESTONE,
    mode: 'Colour 9',
    channel: 21,
    at: [[1, 151, 9]],
    purpose: 'Front specials',
    circuit: 'SB',
  },
  {
    position: 'Box left',
    units: 6,
    type: FRESNEL,
    mode: 'Dimmer',
    channel: 41,
    at: [[1, 261, 1]],
    purpose: 'Side front',
    colour: 'pale amber',
    circuit: 'BL',
  },
  {
    position: 'Box right',
    units: 6,
    type: FRESNEL,
    mode: 'Dimmer',
    channel: 51,
    at: [[1, 271, 1]],
    purpose: 'Side front',
    colour: 'pale amber',
    circuit: 'BR',
  },
  {
    position: 'Bar 1',
    units: 8,
    type: HALYARD,
    mode: 'Standard 22',
    channel: 101,
    at: [[1, 281, 22]],
    purpose: 'Specials',
    circuit: 'B1',
  },
  {
    position: 'Bar 2',
    units: 12,
    type: PILOT,
    mode: 'Full 24',
    channel: 121,
    at: [[2, 1, 24]],
    purpose: 'Top wash',
    circuit: 'B2',
  },
  {
    position: 'Bar 3',
    units: 6,
    type: HALYARD,
    mode: 'Extended 34',
    channel: 141,
    at: [[2, 301, 34]],
    purpose: 'Back specials',
    circuit: 'B3',
  },
  {
    position: 'Bar 4',
    units: 14,
    type: PILOT,
    mode: 'Short 12',
    channel: 161,
    at: [[3, 1, 12]],
    purpose: 'Back wash',
    circuit: 'B4',
  },
  {
    position: 'Bar 5',
    units: 8,
    type: 'Penhallow Tideline batten',
    mode: 'Four cells 20',
    channel: 181,
    at: [[3, 181, 20]],
    purpose: 'Cloth top',
    circuit: 'B5',
  },
  {
    position: 'Cloth row',
    units: 6,
    type: 'Penhallow Tideline batten',
    mode: 'Twelve cells 52',
    channel: 201,
    at: [[4, 1, 52]],
    purpose: 'Cloth foot',
    circuit: 'CR',
  },
  {
    position: 'Boom left 1',
    units: 8,
    type: LODESTONE,
    mode: 'Direct 5',
    channel: 221,
    at: [[3, 361, 5]],
    purpose: 'Shins to heads',
    circuit: 'L1',
  },
  {
    position: 'Boom left 2',
    units: 8,
    type: LODESTONE,
    mode: 'Direct 5',
    channel: 231,
    at: [[3, 401, 5]],
    purpose: 'Shins to heads',
    circuit: 'L2',
  },
  {
    position: 'Boom right 1',
    units: 8,
    type: LODESTONE,
    mode: 'Direct 5',
    channel: 241,
    at: [[3, 441, 5]],
    purpose: 'Shins to heads',
    circuit: 'R1',
  },
  {
    position: 'Boom right 2',
    units: 8,
    type: LODESTONE,
    mode: 'Direct 5',
    channel: 251,
    at: [[4, 321, 5]],
    purpose: 'Shins to heads',
    circuit: 'R2',
  },
  {
    position: 'Gallery',
    units: 8,
    type: 'House par with scroller',
    mode: 'Dimmer and scroller',
    channel: 271,
    at: [
      [4, 371, 1],
      [4, 381, 1],
    ],
    purpose: 'Low sun',
    circuit: 'GA',
  },
  {
    position: 'Deck',
    units: 6,
    type: 'Umberforge Breakwater strobe',
    mode: 'Seven slots',
    channel: 301,
    at: [[4, 391, 7]],
    purpose: 'Storm',
    circuit: 'DK',
  },
  {
    position: 'Deck rear',
    units: 8,
    type: FRESNEL,
    mode: 'Dimmer',
    channel: 321,
    at: [[4, 441, 1]],
    purpose: 'Doorways',
    colour: 'straw',
    circuit: 'DR',
  },
  {
    position: 'Wings',
    units: 4,
    type: 'Fennimore Fogbank hazer',
    mode: 'Three slots',
    channel: 341,
    at: [[4, 461, 3]],
    purpose: 'Haze',
    circuit: 'WG',
  },
];

/** What a real week leaves behind, by position and unit: a clash, a spill past slot 512, one sent back, two that act as one, … */
const CORRECTIONS: Readonly<Record<string, Cells>> = {
  'Bar 1/5': { address: absolute(1, 359), notes: 'Readdressed at focus, check' },
  'Bar 3/6': { address: absolute(2, 491), notes: 'Swapped in from spares' },
  'Deck/2': { address: absolute(4, 391), channel: 301, notes: 'Runs with unit 1 on purpose' },
  'Wings/4': { address: null, notes: 'Back from repair on Thursday' },
  'Boom left 2/4': { unit: '3', notes: 'Number painted over, look on site' },
  'Second bridge/12': { mode: 'Colour 11', notes: 'Menu shows a mode nobody has a chart for' },
  'Bar 4/8': { channel: 167 },
};

/** The whole rig as one plan, ready to be applied to an empty document. The same every time. */
export function demoPlan(): Plan {
  const fixtures = GROUPS.flatMap((group, index) => unitsOf(group, index * 1000));
  const positions = GROUPS.map(
    (group, index): Edit => ({ kind: 'set-position', name: group.position, order: index + 1 }),
  );
  const modes = MODES.map(([type, mode, footprints]): Edit => ({ kind: 'set-mode', type, mode, footprints }));
  const rest: Edit[] = [
    {
      kind: 'set-note',
      note: noteId('demo-note-1'),
      text: 'Fit-up Monday 8:00. Data test before the bars go out.',
      order: 1,
    },
    {
      kind: 'set-note',
      note: noteId('demo-note-2'),
      text: 'Strobes on Deck: warning sign at every door before the first run.',
      order: 2,
    },
  ];
  return { name: 'import', edits: [...positions, ...modes, ...fixtures, ...rest] };
}

function unitsOf(group: Group, order: number): Edit[] {
  return Array.from({ length: group.units }, (_, index): Edit => {
    const unit = index + 1;
    const [first, second] = group.at.map(([universe, slot, step]) => absolute(universe, slot + index * step));
    const cells: Cells = {
      channel: group.channel + index,
      position: group.position,
      unit: String(unit),
      type: group.type,
      mode: group.mode,
      address: first ?? null,
      address2: second ?? null,
      purpose: group.purpose,
      colour: group.colour ?? null,
      circuit: `${group.circuit}-${Math.ceil(unit / 4)}`,
      order: order + unit,
      ...CORRECTIONS[`${group.position}/${unit}`],
    };
    const name = group.position.toLowerCase().replaceAll(' ', '-');
    return { kind: 'add-fixture', fixture: fixtureId(`demo-${name}-${unit}`), cells };
  });
}
