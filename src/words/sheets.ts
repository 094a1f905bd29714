import { getRow } from '#base/table.ts';
import type { Finding } from '#engine/model/finding.ts';
import type { Rig } from '#engine/model/rig.ts';
import { PATCH_HEADINGS } from '#engine/sheet/patch-format.ts';
import type { RecordStanding, Sheet, SheetColumn, SheetKind, SheetPart, Standing } from '#engine/sheet/sheet.ts';
import { CARD_CHOICE_WORDS } from './cards.ts';
import { findingSentence, unitName } from './findings.ts';
import { CAUTION_FOOT, hazardCautions } from './fixture-types.ts';
import { HOUSE_WORDS } from './house.ts';
import { loadStanding } from './loads.ts';
import { RUN_STANDING } from './run-names.ts';
import { PRODUCT } from './screens.ts';
import { SLOT_WORDS } from './slots.ts';
import { CHART_WORDS } from './type-chart.ts';
import { HIRE_STATE_WORDS, UPKEEP_WORDS } from './upkeep.ts';

/** What each sheet is called. */
export const SHEET_TITLES: Readonly<Record<SheetKind, string>> = {
  patch: 'Patch sheet',
  channels: 'Channel sheet',
  universes: 'Universe sheet',
  'universe-slots': 'Universe sheet, slot by slot',
  'channel-slots': 'Channel sheet, slot by slot',
  circuits: 'Circuit sheet',
  positions: 'Position sheet',
  findings: 'Findings',
  network: 'Network sheet',
  runs: 'Run sheet',
  'tech-pack': 'Tech pack',
  'fault-list': 'Fault list',
};

/** What each sheet is for, in a line. */
export const SHEET_ABOUT: Readonly<Record<SheetKind, string>> = {
  patch: 'Every unit by position and number, with all its cells. Bringing it in again gives the same rig.',
  channels: 'Every unit by channel, for whoever calls them.',
  universes: 'Every occupied run of slots by universe and slot.',
  'universe-slots': 'All 512 slots of every universe: whose each is and what it does.',
  'channel-slots': 'Every slot of every unit by channel, with its address and what it does.',
  circuits: 'Every circuit with its supply, breaker and units, and what they draw, as far as their types state it.',
  positions: 'Every unit by position with its weight; the sum of each position and its limit, by whose word.',
  findings: 'What the check found, with every unit it concerns.',
  network: 'Every universe in use with its numbers on the network, the node and port it comes out of, and its run.',
  runs: 'Every data line in the order in which it passes units and splitters, with its metres and unit loads.',
  'tech-pack':
    'The house for whoever comes in: positions and their limits, feeds, data, standing units, spares, contacts, notes.',
  'fault-list': 'Every fault that is open, by where the unit hangs, and what is hired in and has to go back.',
};

const OTHER_HEADINGS: Readonly<Record<Exclude<SheetColumn, keyof typeof PATCH_HEADINGS>, string>> = {
  label: 'Label',
  first: 'First slot',
  last: 'Last slot',
  break: 'Break',
  state: 'State',
  ownSlot: 'Slot of the unit',
  cell: CHART_WORDS.cell,
  does: CHART_WORDS.does,
  byte: CHART_WORDS.byte,
  default: CHART_WORDS.default,
  highlight: CHART_WORDS.highlight,
  values: CHART_WORDS.ranges,
  count: 'Number of units',
  watts: 'Watts',
  amps: 'Amps',
  volts: 'At volts',
  rule: 'Loads may take',
  rating: 'Least rating in amps',
  unknown: 'Not known of units',
  unknownUnits: 'Not known of',
  factorless: 'Units reckoned with power factor 1',
  unsuited: 'Not made for this voltage',
  perBreaker: 'Most on one breaker',
  weight: 'Weight in kg',
  sum: 'Sum of the position in kg',
  severity: 'Severity',
  finding: 'Finding',
  units: 'Units',
  channels: 'Channels',
  by: 'Travels by',
  sacn: 'sACN',
  group: 'Multicast group',
  portAddress: 'Port-Address',
  node: 'Node',
  nodeAddress: 'Network address',
  port: 'Port',
  slotsUsed: 'Slots used',
  runFrom: 'Begins at',
  runPlace: 'Place',
  runLink: 'Unit or splitter',
  runMetres: 'Metres so far',
  runUnknown: 'Stretches not known',
  runLoads: 'Unit loads so far',
  runFindings: 'Found',
  supply: 'Supply',
  phase: 'Phase',
  breaker: 'Breaker',
  breakerAmps: 'Breaker in amps',
  voltAmps: 'Volt-amperes',
  used: 'Used of what it may carry in %',
  extra: 'Other load in kg',
  limit: 'Limit in kg',
  person: 'Limit stated by',
  on: 'Stated on',
  remaining: 'Left of the limit in kg',
  standing: 'Findings of it',
  task: 'What to do',
  was: 'Was',
  becomes: 'Is to be',
  fact: 'What',
  said: 'As the house says',
  numbering: 'Numbers run',
  trim: 'Trim in m',
  outletAt: 'Outlet at',
  connector: 'Connector',
  phases: 'Phases',
  supplyAmps: 'Amps a line',
  outlet: 'Outlet',
  carries: 'Carries',
  endsAt: 'Its line ends at',
  role: 'Role',
  ports: 'Number of ports',
  spare: 'Spare',
  number: 'Number',
  where: 'Where it is',
  name: 'Name',
  phone: 'Phone',
  email: 'E-mail',
  note: 'Note',
  faultOf: 'Unit',
  fault: 'What is wrong',
  seenBy: 'Seen by',
  seenOn: 'Seen on',
  item: 'Item',
  hiredFrom: 'From',
  due: 'Due back',
  stands: 'Stands',
  putBack: 'Put back',
  tickedBy: 'Ticked by',
  tickedAt: 'Ticked at',
};

/** What each table of a sheet of several is called. */
const PART_TITLES: Readonly<Record<SheetPart, string>> = {
  house: 'The house',
  positions: 'Positions',
  supplies: 'Supplies',
  circuits: 'Circuits',
  outlets: 'Data outlets',
  nodes: 'Nodes',
  universes: 'Universes',
  units: 'Standing units by position and type',
  spares: 'Spares',
  contacts: 'Contacts',
  notes: 'Notes',
  faults: 'Open faults',
  hires: 'Hired in, to go back',
};

export const sheetPartTitle = (part: SheetPart): string => PART_TITLES[part];

/** What heads a column of any sheet. */
export function sheetHeading(column: SheetColumn): string {
  const headings: Readonly<Record<SheetColumn, string>> = { ...PATCH_HEADINGS, ...OTHER_HEADINGS };
  return headings[column];
}

/** The lines above a sheet's table: what it is, of which rig, and when it was made. `madeAt` is in milliseconds since 1970. */
export function sheetHead(kind: SheetKind, rigName: string, madeAt: number): readonly string[] {
  return [SHEET_TITLES[kind], `Rig: ${rigName}`, madeLine(madeAt)];
}

/** When and with what a sheet was made. `madeAt` is in milliseconds since 1970. */
export function madeLine(madeAt: number): string {
  const time = new Date(madeAt).toISOString().slice(0, 16).replace('T', ' ');
  return `Made ${time} UTC with ${PRODUCT}`;
}

/** What stands on a sheet of a rig beside its rows, in words. `today`: the day it is made, `2026-11-25`; empty for none. */
export const standingOf = (rig: Rig, findings: readonly Finding[], today = ''): Standing => ({
  findings,
  say: (finding) => findingSentence(finding, rig),
  slots: SLOT_WORDS,
  runs: RUN_STANDING,
  loads: loadStanding(rig),
  record: recordStanding(rig, today),
  cautions: hazardCautions,
  cautionFoot: CAUTION_FOOT,
  way: (by) => CARD_CHOICE_WORDS[by] ?? by,
});

/** What a sheet says of the record of a house. */
const recordStanding = (rig: Rig, today: string): RecordStanding => ({
  fact: (of) => HOUSE_WORDS.venue[of],
  choice: (word) => CARD_CHOICE_WORDS[word] ?? word,
  noLimit: 'nobody has stated it',
  unit: ({ unit, called }) => {
    const fixture = getRow(rig.fixtures, unit);
    return fixture === undefined ? UPKEEP_WORDS.goneUnit(called) : unitName(fixture);
  },
  hire: (state) => HIRE_STATE_WORDS[state],
  today,
  cautions: [UPKEEP_WORDS.hot, UPKEEP_WORDS.swapCaution],
});

export const NOTHING_STANDS = 'No findings stand.';

/** The name of a sheet's file: the rig's name in plain letters, the sheet, the day. */
export function sheetFileName(kind: Sheet['kind'], rigName: string, madeAt: number): string {
  const plain = rigName
    .normalize('NFKD')
    .replace(/[^\w]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .toLowerCase();
  return `${[plain, kind, new Date(madeAt).toISOString().slice(0, 10)].filter((part) => part !== '').join('-')}.csv`;
}
