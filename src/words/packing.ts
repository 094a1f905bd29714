import type { Universe } from '#engine/model/address.ts';
import type { Rig } from '#engine/model/rig.ts';
import type { AllocateOptions } from '#engine/patch/allocate/allocate-options.ts';
import type { Allocation } from '#engine/patch/allocate/allocate-plan.ts';
import type { Repair } from '#engine/patch/repair/repair-plan.ts';
import type { Spare } from '#engine/patch/spare/room-for.ts';
import { listed, stretchesOf } from './listed.ts';
import { heldNames } from './plans.ts';
import { counted } from './screens.ts';

/** Finding room for the selected units. */
export const ALLOCATE_WORDS = {
  title: 'Find room',
  about:
    'Places the selected units into free slots, in as few new universes as can be found. All other units stay where they are, and so do locked ones.',
  together: 'Keep together',
  togetherChoices: {
    'as-fits': 'nothing: each where it fits',
    'by-position': 'the units of a position',
    'by-run': 'the units of a run, in its order',
    'by-type': 'the units of a type',
    'in-order': 'all, in the order of the sheet',
  } satisfies Record<AllocateOptions['together'], string>,
  breaks: 'Breaks of a unit',
  breaksChoices: {
    'in-one-universe': 'end to end, in one universe',
    anywhere: 'each where it fits',
  } satisfies Record<AllocateOptions['breaks'], string>,
  grid: 'Start on',
  gridChoices: {
    1: 'any slot',
    10: 'every 10th slot: 1, 11, 21, …',
    16: 'every 16th slot: 1, 17, 33, …',
    32: 'every 32nd slot: 1, 33, 65, …',
  },
  atEnd: 'Spare slots at the end of a universe',
  afterGroup: 'Spare slots after each group',
  allowed: 'Only in universes',
  allowedHint: 'Numbers and ranges, such as 1-4, 7. Empty: any.',
  barred: 'Not in universes',
  find: 'Find room for the selected units',
  badSlots: 'Spare slots are a whole number from 0 to 511.',
  badUniverses: 'These are no universes. Write numbers from 1 to 63999 and ranges, as in 1-4, 7.',
} as const;

/** Clearing all clashes at once. */
export const REPAIR_WORDS = {
  title: 'Clear every clash',
  about:
    'Moves as few units as can be, so that no two claim a slot and none runs past slot 512. Locked units stay, as do those whose slots are not known.',
  hard: 'Hardest to reach',
  hardHint: 'Moving a unit there counts as moving five elsewhere.',
  nowhere: 'nowhere more than elsewhere',
  set: 'Set already',
  setHint: 'Moving a unit that is set counts as moving two.',
  setChoices: { none: 'no unit', selected: 'the selected units' },
  clear: 'Clear every clash',
} as const;

export const SPARE_WORDS = {
  title: 'Spare room',
  none: 'Select a unit to see how many more of its mode fit.',
  unknown: 'How many slots the selected unit takes is not known.',
} as const;

/** What an allocation says of its universes, and of how few there could be. */
export function allocationSentences({ universes, opened, bounds, split }: Allocation): readonly string[] {
  const lie = `The units come to lie in ${universesWords(universes)}.`;
  const fresh =
    opened === 0
      ? 'No universe is used that was not in use.'
      : `${opened} of these ${opened === 1 ? 'is' : 'are'} used by nobody else; ${leastWords(opened, bounds.proven)}.`;
  const apart =
    split.length === 0
      ? []
      : [`Not kept in one run, for want of room: ${split.map((name) => `“${name}”`).join(', ')}.`];
  return [lie, fresh, ...apart];
}

const leastWords = (opened: number, bound: number) =>
  opened <= bound ? 'fewer are not possible' : `proven is that ${bound} or more are needed`;

/** What a repair says of its moves, and of what it leaves. */
export function repairSentences({ moves, cost, isLeast, left, held }: Repair, rig: Rig): readonly string[] {
  const units = moves.reduce((total, { fixtures }) => total + fixtures.length, 0);
  const moved = `${counted(units, 'unit')} ${units === 1 ? 'moves' : 'move'}; that costs ${cost}, counting 1 for a unit that is easy to move.`;
  const least = isLeast
    ? 'Nothing that clears as much costs less.'
    : 'Something cheaper may exist: too many units with several breaks are in each other’s way to try everything.';
  if (left.length === 0) return [moved, least];
  const stay = left.length === 1 ? 'clash stays' : 'clashes stay';
  const why =
    held.length === 0
      ? 'between units that cannot be moved. Check their types and modes.'
      : `held by locked units: ${heldNames(held, rig)}. Unlock them to move them.`;
  return [moved, least, `${left.length} ${stay}, ${why}`];
}

/** How many more of a mode fit: `12 more fit: 4 in universe 2, 8 in universe 5.` */
export function spareSentence(mode: string, { units, universes }: Spare): string {
  if (units === 0) return `No more of ${mode} fit into the universes in use.`;
  const shown = universes.slice(0, SHOWN).map(({ universe, units: here }) => `${here} in universe ${universe}`);
  const rest = universes.length - shown.length;
  const more = rest > 0 ? ` and some in ${counted(rest, 'other universe')}` : '';
  return `${units} more of ${mode} ${units === 1 ? 'fits' : 'fit'}: ${shown.join(', ')}${more}.`;
}

/** Universes that a sentence names one by one. */
const SHOWN = 6;

/** `universe 3`, `universes 1 to 4 and 7`. */
export function universesWords(universes: readonly Universe[]): string {
  const stretches = stretchesOf(universes);
  const named = stretches.slice(0, SHOWN).flatMap(stretchWords);
  const rest = stretches.slice(SHOWN).reduce((total, [first, last]) => total + last - first + 1, 0);
  const list = rest > 0 ? [...named, `${rest} more`] : named;
  return `${universes.length === 1 ? 'universe' : 'universes'} ${listed(list)}`;
}

function stretchWords([first, last]: readonly [number, number]): readonly string[] {
  if (first === last) return [String(first)];
  return last === first + 1 ? [String(first), String(last)] : [`${first} to ${last}`];
}
