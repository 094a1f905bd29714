import { absolute } from '#engine/model/address.ts';
import type { Cells } from '#engine/model/fixture.ts';

/** Units of one kind that hang side by side. */
export interface Group {
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
  readonly firmware?: string;
}

const LODESTONE = 'Penhallow Lodestone profile';
export const PILOT = 'Umberforge Pilot 19 wash';
export const HALYARD = 'Stoat & Ravel Halyard spot';
export const TIDELINE = 'Penhallow Tideline batten';
export const BREAKWATER = 'Umberforge Breakwater strobe';
export const FRESNEL = 'House 1 kW fresnel';

export const GROUPS: readonly Group[] = [
  {
    position: 'Front bridge',
    units: 16,
    type: LODESTONE,
    mode: 'Colour 9',
    channel: 1,
    at: [[1, 1, 9]],
    purpose: 'Front light',
    circuit: 'FB',
    firmware: '3.1',
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
    firmware: '3.1',
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
    mode: 'Standard',
    channel: 101,
    at: [[1, 281, 22]],
    purpose: 'Specials',
    circuit: 'B1',
    firmware: '2.2',
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
    firmware: '1.6',
  },
  {
    position: 'Bar 3',
    units: 6,
    type: HALYARD,
    mode: 'Extended',
    channel: 141,
    at: [[2, 301, 34]],
    purpose: 'Back specials',
    circuit: 'B3',
    firmware: '2.2',
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
    firmware: '1.6',
  },
  {
    position: 'Bar 5',
    units: 8,
    type: TIDELINE,
    mode: 'Four cells 20',
    channel: 181,
    at: [[3, 181, 20]],
    purpose: 'Cloth top',
    circuit: 'B5',
  },
  {
    position: 'Cloth row',
    units: 6,
    type: TIDELINE,
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
    type: BREAKWATER,
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
export const CORRECTIONS: Readonly<Record<string, Cells>> = {
  'Bar 1/5': { address: absolute(1, 359), notes: 'Readdressed at focus, check' },
  'Bar 3/6': { address: absolute(2, 491), notes: 'Swapped in from spares' },
  'Deck/2': { address: absolute(4, 391), channel: 301, notes: 'Runs with unit 1 on purpose' },
  'Wings/4': { address: null, notes: 'Back from repair on Thursday' },
  'Boom left 2/4': { unit: '3', notes: 'Number painted over, look on site' },
  'Second bridge/12': { mode: 'Direct 5', channel: 31, notes: 'Its menu was reset, put it back to Colour 9' },
  'Bar 3/2': { firmware: '1.8', notes: 'Update before focus' },
  'Bar 4/3': { firmware: '1.5' },
  'Bar 4/8': { channel: 167 },
  'Bar 4/11': { firmware: '1.5' },
};
