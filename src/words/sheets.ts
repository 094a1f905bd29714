import type { Finding } from '#engine/model/finding.ts';
import type { Rig } from '#engine/model/rig.ts';
import { PATCH_HEADINGS } from '#engine/sheet/patch-format.ts';
import type { Sheet, SheetColumn, SheetKind, Standing } from '#engine/sheet/sheet.ts';
import { CARD_CHOICE_WORDS } from './cards.ts';
import { findingSentence } from './findings.ts';
import { CAUTION_FOOT, hazardCautions } from './fixture-types.ts';
import { loadStanding } from './loads.ts';
import { RUN_STANDING } from './run-names.ts';
import { PRODUCT } from './screens.ts';
import { SLOT_WORDS } from './slots.ts';
import { CHART_WORDS } from './type-chart.ts';

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
};

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

/** What stands on a sheet of a rig beside its rows, in words. */
export const standingOf = (rig: Rig, findings: readonly Finding[]): Standing => ({
  findings,
  say: (finding) => findingSentence(finding, rig),
  slots: SLOT_WORDS,
  runs: RUN_STANDING,
  loads: loadStanding(rig),
  cautions: hazardCautions,
  cautionFoot: CAUTION_FOOT,
  way: (by) => CARD_CHOICE_WORDS[by] ?? by,
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
