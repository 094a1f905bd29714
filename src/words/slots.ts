import type { SlotWords } from '#engine/sheet/sheet.ts';
import type { SlotState } from '#engine/sheet/universe-slots.ts';
import { highest } from '#engine/type/dmx-value.ts';
import type { PinnedUse } from '#engine/type/pin-slots.ts';
import { counted } from './screens.ts';
import { attributeWord, byteWord, CHART_WORDS, rangeText, toldRanges, valuesText } from './type-chart.ts';

const STATES: Readonly<Record<SlotState, string>> = {
  free: 'free',
  used: 'used',
  'acting-as-one': 'shared by units acting as one',
  'claimed-twice': 'claimed twice',
};

/** What a slot does: its attribute, and what the manual calls it. */
function slotDoes(uses: readonly PinnedUse[] | null): string {
  if (uses === null) return 'Not known';
  if (uses.length === 0) return 'Not used, but it belongs to the unit';
  return uses.map(useWord).join(' / ');
}

const useWord = (use: PinnedUse) => [attributeWord(use), use.name].filter((part) => part !== '').join(' · ');

/** The longest text of values that stands in a cell. */
const SHORT = 80;

/** `0–127 Off; 128–255 On`; how many ranges there are where that gets long. */
function valuesInShort(use: PinnedUse): string {
  const ranges = toldRanges(use);
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
