import type { SlotWords } from '#engine/sheet/sheet.ts';
import type { SlotState } from '#engine/sheet/universe-slots.ts';
import { highest } from '#engine/type/dmx-value.ts';
import type { PinnedUse } from '#engine/type/pin-slots.ts';
import type { ChartRange } from '#engine/type/type-chart.ts';
import { counted } from './screens.ts';
import { attributeWord, byteWord, CHART_WORDS, rangeText, toldRanges, valuesText } from './type-chart.ts';

const STATES: Readonly<Record<SlotState, string>> = {
  free: 'free',
  used: 'used',
  'acting-as-one': 'acting as one',
  'claimed-twice': 'claimed twice',
};

/** What a slot does: its attribute, and what the manual calls it. */
function slotDoes(uses: readonly PinnedUse[] | null): string {
  if (uses === null) return 'Not known';
  if (uses.length === 0) return 'Not used, but it belongs to the unit';
  return uses.map(useWord).join(' / ');
}

const useWord = (use: PinnedUse) => [attributeWord(use), use.name].filter((part) => part !== '').join(' · ');

/** The ranges worth reading beside what the manual calls the slot. */
export function rangesBeyondName(use: PinnedUse): readonly ChartRange[] {
  const ranges = toldRanges(use);
  const [only] = ranges;
  return ranges.length === 1 && only !== undefined && rangeText(only, use) === use.name ? [] : ranges;
}

/** The longest text of values that stands in a cell. */
const SHORT = 80;

/** `0–127 Off; 128–255 On`; how many ranges there are where that gets long. */
function valuesInShort(use: PinnedUse): string {
  const ranges = rangesBeyondName(use);
  const out = ranges.length === 0 || use.rangeBytes === 1 ? '' : ` (${CHART_WORDS.outOf(highest(use.rangeBytes))})`;
  const text = ranges.map((range) => `${valuesText(range)} ${rangeText(range, use)}`).join('; ') + out;
  return text.length <= SHORT ? text : counted(ranges.length, 'range');
}

/** How a slot is said, on paper and on screen. */
export const SLOT_WORDS: SlotWords = {
  state: (state) => STATES[state],
  does: slotDoes,
  byte: byteWord,
  values: valuesInShort,
};

/** The page of a rig's universes, slot by slot. */
export const UNIVERSE_PAGE_WORDS = {
  title: 'Universes',
  list: 'Universes in use',
  choose: 'Universe',
  none: 'No unit has an address yet. Give one an address in the sheet; its slots stand here then.',
  use: (used: number, free: number) => `${used} used · ${free} free`,
  clash: 'claimed twice',
  heading: (universe: number) => `Universe ${universe}`,
  csv: 'Take out every slot as CSV',
  slots: (universe: number) => `Slots of universe ${universe}`,
  hint: 'Arrows go from slot to slot, Enter opens the slots of the unit.',
  slot: 'Slot',
  unit: 'Unit',
  channel: 'Ch',
  state: 'State',
} as const;

/** Name of a universe in a list to choose from: `2 Balcony: 480 used · 32 free`. */
export const universeChoice = (universe: number, label: string, freeSlots: number, slots: number): string =>
  `${[universe, label].join(' ').trim()}: ${UNIVERSE_PAGE_WORDS.use(slots - freeSlots, freeSlots)}`;

/** What a unit's slots do, beside the sheet. */
export const SLOT_CARD_WORDS = {
  title: 'Slots',
  none: 'Select a unit to see what its slots do.',
  unknownMode: 'How many slots it takes is not known: set its type and mode.',
  unknown: 'What its slots do is not known: take the type from the library.',
  beyond: 'The library’s copy of this mode does not describe all of these slots.',
  channel: (channel: number) => `channel ${channel}`,
  notPatched: 'It has no address, so its slots are nowhere yet.',
  breakTitle: (part: number, start: string | null) =>
    start === null ? `Break ${part}, without an address` : `Break ${part} from ${start}`,
  address: 'Address',
  slot: 'Slot',
  does: CHART_WORDS.does,
  cell: (cell: string) => (/^cell\b/i.test(cell) ? cell : `cell ${cell}`),
  stands: (first: number, highlight: number | null) =>
    highlight === null ? `default ${first}` : `default ${first} · highlight ${highlight}`,
  pastEnd: 'past 512',
  firmware: 'Firmware found',
  notFound: 'nobody wrote it down',
  needed: 'This mode needs',
  wanted: 'Wanted',
  lacks: 'The firmware found does not have this mode.',
  previous: 'Previous unit',
  next: 'Next unit',
} as const;

/** How a unit's address switches stand. */
export const SWITCH_WORDS = {
  title: 'Address switches',
  list: (of: string) => `Address switches: ${of}`,
  of: (start: string, part: number | null) => (part === null ? `For ${start}` : `For ${start}, break ${part}`),
  several: 'Only for those breaks that have switches of their own.',
  one: 'Switch',
  on: 'ON',
  off: 'OFF',
  inShort: (numbers: readonly number[]) => (numbers.length === 0 ? 'All off' : `On: ${numbers.join(', ')}`),
  holds: {
    A: 'Its type says that the switches hold the address.',
    B: 'Its type says that the switches hold the address less 1.',
  },
  check: 'Check it on the unit: on some, switch 1 is at the right, or ON points down.',
  cannot: 'Nine switches that hold the address cannot show 512: choose another address, or see the manual.',
} as const;
