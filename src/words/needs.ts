import { getRow, rowsOf } from '#base/table.ts';
import type { FixtureId, ModeId } from '#engine/model/ids.ts';
import { compareNatural } from '#engine/model/natural-order.ts';
import type { Mode, Rig } from '#engine/model/rig.ts';
import type { ModeNeeds, MoreNeeds } from '#engine/patch/spare/change-needs.ts';
import { unitName } from './findings.ts';
import { universesWords } from './packing.ts';
import { heldNames } from './plans.ts';
import { counted } from './screens.ts';

/** Asking what a change would need, before anybody makes it. */
export const NEEDS_WORDS = {
  title: 'A planned change',
  about: 'Says what it would need. Nothing is changed.',
  more: 'More units',
  of: 'Mode',
  count: 'How many more',
  another: 'and of another mode',
  fewer: 'not of this mode',
  ask: 'Say what they need',
  change: 'Another mode',
  to: (units: number) => `Set ${counted(units, 'selected unit')} to`,
  askMode: 'Say what that needs',
  noModes: 'No type is described yet: see Types.',
  badCount: 'A whole number from 0 to 5,000.',
} as const;

/** The modes of a rig to choose from, by name, with their slots. */
export function modeChoices(rig: Rig): readonly { readonly value: ModeId; readonly label: string }[] {
  return [...rowsOf(rig.modes)]
    .map((mode) => ({ value: mode.id, label: `${modeName(mode)} (${mode.footprints.join('+')})` }))
    .sort((a, b) => compareNatural(a.label, b.label) || (a.value < b.value ? -1 : 1));
}

const modeName = ({ type, mode }: Mode) => `${type} ${mode}`.trim();

/** What more units would need, a sentence each. */
export function moreSentences({ units, slots, places, opened, proven }: MoreNeeds): readonly string[] {
  const old = places.filter(({ universe }) => !opened.includes(universe));
  const inOld = old.reduce((total, each) => total + each.units, 0);
  const asked = `${counted(units, 'unit')} would take ${counted(slots, 'slot')}.`;
  const where = universesWords(old.map(({ universe }) => universe));
  const stay = 'No unit of the rig has to move.';
  if (opened.length === 0) return [asked, `All of them fit into ${where}, in use already.`, stay];
  const fits =
    inOld === 0
      ? 'None of them fits into the universes in use.'
      : `${inOld} of them ${inOld === 1 ? 'fits' : 'fit'} into ${where}, in use already.`;
  const least = opened.length <= proven ? 'fewer are not possible' : `proven is that ${proven} or more are needed`;
  return [
    asked,
    fits,
    `${inOld === 0 ? 'They need' : 'The others need'} ${counted(opened.length, 'new universe')}: ${universesWords(opened)}; ${least}.`,
    stay,
  ];
}

/** What another mode would need, a sentence each. */
export function modeSentences({ units, slots, raised, moving, opened, left }: ModeNeeds, rig: Rig): readonly string[] {
  const size =
    slots === 0 ? 'as many slots as now' : `${counted(Math.abs(slots), 'slot')} ${slots > 0 ? 'more' : 'fewer'}`;
  const changing = `${counted(units, 'unit')} would change, and take ${size}.`;
  if (raised === 0) return [changing, 'No new clash would come of it, and no unit has to move.'];
  const names = `${moving
    .slice(0, SHOWN)
    .map((id) => nameOf(id, rig))
    .join(', ')}${moving.length > SHOWN ? ` and ${moving.length - SHOWN} more` : ''}`;
  return [
    changing,
    `${counted(raised, 'blocker')} would come of it.`,
    ...(moving.length === 0 ? [] : [`${counted(moving.length, 'unit')} would have to move: ${names}.`]),
    ...(opened.length === 0 ? [] : [`They would need ${universesWords(opened)}, which nobody uses now.`]),
    ...(left.length === 0 ? [] : [leftWords({ left }, rig)]),
  ];
}

function leftWords({ left }: Pick<ModeNeeds, 'left'>, rig: Rig): string {
  const stay = `${counted(left.length, 'blocker')} would stay, for which nothing was found to move.`;
  const locked = [...new Set(left.flatMap(({ fixtures }) => fixtures))].filter(
    (id) => (getRow(rig.fixtures, id)?.lock ?? '').trim() !== '',
  );
  return locked.length === 0 ? stay : `${stay} Locked among them: ${heldNames(locked.sort(), rig)}.`;
}

const nameOf = (id: FixtureId, rig: Rig) => unitName(getRow(rig.fixtures, id));

/** Units that a sentence names one by one. */
const SHOWN = 6;
