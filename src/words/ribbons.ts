import { formatAddress } from '#engine/address/notation.ts';
import { SLOTS, slotOf } from '#engine/model/address.ts';
import type { Landing } from '#engine/patch/landing.ts';
import { counted } from './screens.ts';

/** All universes of a rig as ribbons, and the blocks one carries. */
export const RIBBONS_WORDS = {
  views: 'View',
  all: 'All ribbons',
  slots: 'Slot by slot',
  list: 'Ribbons of the universes',
  summary: (used: number, free: number, unpatched: number) =>
    `${counted(used, 'universe')} in use · ${counted(free, 'slot')} free in them · ${counted(unpatched, 'fixture')} unpatched`,
  toSlots: (universe: number) => `Universe ${universe}, slot by slot`,
  label: (universe: number) => `Label of universe ${universe}`,
  labelHint: 'what it feeds',
  room: (free: number, longest: number) =>
    free === longest ? `${free} free` : `${free} free, at most ${longest} in a row`,
  carry: 'Carry it',
  putHere: 'Put it here',
  leave: 'Leave it',
  lower: 'One slot lower',
  higher: 'One slot higher',
  hint: 'Drag a block, or press M on it: arrows carry it by a slot, Page keys by ten, Ctrl with up or down to another universe. Space opens its slots.',
  fingerHint: 'A tap on a block opens its slots, and from there it can be carried.',
  readerHint: 'You are a reader here: blocks stay where they are. Enter opens the slots of a unit.',
  howToEnd: {
    keys: 'Enter puts it there, Escape leaves it.',
    pointer: 'Letting go puts it there, Escape leaves it.',
    finger: 'A tap on a ribbon carries it there.',
  },
  gone: 'This unit is gone: someone removed it.',
  moved: (unit: string, from: string, to: string) => `${unit} moved from ${from} to ${to}.`,
  left: (unit: string, at: string) => `${unit} stays at ${at}.`,
  takeBack: 'Undo',
  takenBack: 'Taken back.',
} as const;

/** `2:101–116`; only the slots that there are. */
const spanWords = ({ at, slots }: Landing): string => {
  const last = Math.min(SLOTS, slotOf(at) + slots - 1);
  return slots <= 1 ? formatAddress(at) : `${formatAddress(at)}–${last}`;
};

/** What a block would get and meet: `Bar 1 · 5 would get 1:369–380: it would meet 2 units, first Bar 1 · 6.` */
export function landingSentence(unit: string, landing: Landing, first: string): string {
  return `${unit} would get ${spanWords(landing)}: ${meetWords(landing, first)}.`;
}

function meetWords({ over, meets }: Landing, first: string): string {
  const met = meets.length === 0 ? '' : `it would meet ${counted(meets.length, 'unit')}, first ${first}`;
  const past = over === 0 ? '' : `${counted(over, 'slot')} would lie past slot ${SLOTS}, so it cannot be put there`;
  return [past, met].filter((part) => part !== '').join('; ') || 'the slots are free';
}

/** On a block that somebody else carries: `Ana Reis carries Bar 1 · 5 to 2:101–116`. */
export function carriedByOther(person: string, unit: string, landing: Landing): string {
  return `${person} carries ${unit} to ${spanWords(landing)}`;
}

/** On the block itself: `369`, `369 meets 2`, `510 past 512`. */
export function landingMark({ at, over, meets }: Landing): string {
  if (over > 0) return `${slotOf(at)} past ${SLOTS}`;
  return meets.length === 0 ? String(slotOf(at)) : `${slotOf(at)} meets ${meets.length}`;
}
