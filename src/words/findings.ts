import { getRow } from '#base/table.ts';
import { unreachable } from '#base/unreachable.ts';
import type { Field } from '#engine/model/field.ts';
import type { Finding, Rule, Severity, SlotRun } from '#engine/model/finding.ts';
import type { Fixture } from '#engine/model/fixture.ts';
import type { SignedHazard } from '#engine/model/fixture-type.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import { compareNatural } from '#engine/model/natural-order.ts';
import type { Rig } from '#engine/model/rig.ts';
import { compareRowOrder } from '#engine/model/row-order.ts';
import { listed } from './listed.ts';
import { isPlantFinding, PLANT_RULE_TITLES, plantSentence } from './plant-findings.ts';

/** One finding's severity as a word, and several of them. */
export const SEVERITY_WORDS: Readonly<Record<Severity, { readonly one: string; readonly many: string }>> = {
  blocker: { one: 'blocker', many: 'blockers' },
  caution: { one: 'caution', many: 'cautions' },
  note: { one: 'note', many: 'notes' },
};

/** `1 blocker`, `3 cautions`. */
export function countedSeverity(count: number, severity: Severity): string {
  const { one, many } = SEVERITY_WORDS[severity];
  return `${count} ${count === 1 ? one : many}`;
}

/** What each rule is called in a list of findings. */
export const RULE_TITLES: Readonly<Record<Rule, string>> = {
  'slots-claimed-twice': 'Slots claimed twice',
  'past-the-end': 'Past slot 512',
  'unknown-type': 'Type not known',
  'unknown-mode': 'Mode not known',
  unpatched: 'No address',
  'channel-on-unlike': 'One channel on unlike units',
  'same-place': 'Two units in one place',
  unreadable: 'Cannot be read',
  'acting-as-one': 'Acting as one',
  'channel-shared': 'Channel shared',
  'no-slots': 'Mode without slots',
  'firmware-mode': 'Firmware lacks the mode',
  'hazard-unsigned': 'Nobody answers for it',
  'firmware-wanted': 'Other firmware wanted',
  'library-differs': 'Other revision in the library',
  ...PLANT_RULE_TITLES,
};

/** What each field is called in a sentence. */
export const FIELD_WORDS: Readonly<Record<Field, string>> = {
  channel: 'channel',
  position: 'position',
  unit: 'unit',
  type: 'type',
  mode: 'mode',
  address: 'address',
  address2: 'address of break 2',
  address3: 'address of break 3',
  address4: 'address of break 4',
  purpose: 'purpose',
  colour: 'colour',
  circuit: 'circuit',
  notes: 'notes',
  order: 'place in the sheet',
  firmware: 'firmware',
  run: 'run',
  along: 'place on the run',
  cable: 'metres of cable',
  lock: 'lock',
};

/** The most units a sentence names before it counts the rest. */
const NAMED = 6;

/** `LX 1 · 5`; without a position or unit what else it is known by. */
export function unitName(fixture: Fixture | undefined): string {
  if (fixture === undefined) return 'a unit that is gone';
  const place = [fixture.position.trim(), fixture.unit.trim()].filter((part) => part !== '');
  if (place.length > 0) return place.join(' · ');
  if (fixture.channel !== null) return `channel ${fixture.channel}`;
  return fixture.type.trim() === '' ? 'a unit without a name' : fixture.type.trim();
}

/** `LX 1 · 4, LX 1 · 5 and 3 more`: along positions, in natural order. */
export function unitNames(ids: readonly FixtureId[], rig: Rig): string {
  const fixtures = ids.slice(0, CONSIDERED).map((id) => getRow(rig.fixtures, id));
  const names = fixtures.sort(comparePlaces).slice(0, NAMED).map(unitName);
  const rest = ids.length - names.length;
  if (rest > 0) return `${names.join(', ')} and ${rest} more`;
  return listed(names);
}

/** The most units of a crowd that are put in order to name the first of them. */
const CONSIDERED = 200;

function comparePlaces(a: Fixture | undefined, b: Fixture | undefined): number {
  if (a === undefined || b === undefined) return Number(a === undefined) - Number(b === undefined);
  return (
    compareNatural(a.position, b.position) ||
    compareNatural(a.unit, b.unit) ||
    (a.channel ?? 0) - (b.channel ?? 0) ||
    compareRowOrder(a, b)
  );
}

/** `1:374–380`, or `1:374` when it is one slot. */
function slotRunWords({ universe, first, last }: SlotRun): string {
  return first === last ? `${universe}:${first}` : `${universe}:${first}–${last}`;
}

const slots = (run: SlotRun) => `${run.first === run.last ? 'Slot' : 'Slots'} ${slotRunWords(run)}`;
const is = (run: SlotRun) => (run.first === run.last ? 'is' : 'are');
const counted = (count: number, word: string) => `${count} ${word}${count === 1 ? '' : 's'}`;
const quoted = (text: string | number) => `“${text}”`;

/** A finding in full, naming everyone it concerns. */
export function findingSentence(finding: Finding, rig: Rig): string {
  if (isPlantFinding(finding)) return plantSentence(finding, unitNames(finding.fixtures, rig));
  const names = unitNames(finding.fixtures, rig);
  switch (finding.rule) {
    case 'slots-claimed-twice':
      return finding.fixtures.length === 1
        ? `${slots(finding.run)} ${is(finding.run)} claimed by two breaks of ${names}`
        : `${slots(finding.run)} ${is(finding.run)} claimed by ${names}`;
    case 'acting-as-one':
      return `${names} act as one on ${slotRunWords(finding.run)}`;
    case 'channel-on-unlike':
      return `Channel ${finding.channel} is on unlike units: ${names}`;
    case 'channel-shared':
      return `Channel ${finding.channel} is on ${names}, at different addresses`;
    case 'same-place':
      return `${finding.position} · ${finding.unit} is the place of ${counted(finding.fixtures.length, 'unit')}${channelsOf(finding.fixtures, rig)}`;
    case 'hazard-unsigned':
      return `Nobody answers for the ${SIGNED_HAZARD_NAMES[finding.hazard]} of ${listed(finding.types)}: ${names}. Name the person responsible`;
    case 'library-differs':
      return `${differsSentence(finding)}: ${names}`;
    case 'no-slots':
    case 'firmware-mode':
    case 'firmware-wanted':
    case 'past-the-end':
    case 'unknown-type':
    case 'unknown-mode':
    case 'unpatched':
    case 'unreadable':
      return `${names}: ${lowerFirst(ownSentence(finding, firmwareOf(finding, rig)))}`;
    default:
      return unreachable(finding);
  }
}

/** A finding as it reads in the margin of one unit's row. */
export function findingSentenceFor(finding: Finding, fixture: FixtureId, rig: Rig): string {
  if (isPlantFinding(finding)) return plantSentence(finding, unitNames(finding.fixtures, rig));
  const others = unitNames(
    finding.fixtures.filter((id) => id !== fixture),
    rig,
  );
  switch (finding.rule) {
    case 'slots-claimed-twice':
      return finding.fixtures.length === 1
        ? `${slots(finding.run)} ${is(finding.run)} claimed by two breaks of this unit`
        : `${slots(finding.run)} ${is(finding.run)} also ${others}`;
    case 'acting-as-one':
      return `Acts as one with ${others}`;
    case 'channel-on-unlike':
      return `Channel ${finding.channel} is also on an unlike unit: ${others}`;
    case 'channel-shared':
      return `Channel ${finding.channel} is also on ${others}, at another address`;
    case 'same-place':
      return `Same position and unit as ${counted(finding.fixtures.length - 1, 'other row')}`;
    case 'hazard-unsigned':
      return `Nobody answers for its ${SIGNED_HAZARD_NAMES[finding.hazard]}: name the person responsible`;
    case 'library-differs':
      return differsSentence(finding);
    case 'no-slots':
    case 'firmware-mode':
    case 'firmware-wanted':
    case 'past-the-end':
    case 'unknown-type':
    case 'unknown-mode':
    case 'unpatched':
    case 'unreadable':
      return ownSentence(finding, getRow(rig.fixtures, fixture)?.firmware ?? '');
    default:
      return unreachable(finding);
  }
}

type OwnFinding = Extract<
  Finding,
  {
    rule:
      | 'past-the-end'
      | 'unknown-type'
      | 'unknown-mode'
      | 'unpatched'
      | 'unreadable'
      | 'no-slots'
      | 'firmware-mode'
      | 'firmware-wanted';
  }
>;

/** What concerns one unit alone, without its name. `firmware`: that it was found with. */
function ownSentence(finding: OwnFinding, firmware: string): string {
  switch (finding.rule) {
    case 'past-the-end':
      return `Runs ${counted(finding.over, 'slot')} past slot 512 of universe ${finding.run.universe}`;
    case 'unknown-type':
      return finding.type.trim() === '' ? 'No type given' : `Type ${quoted(finding.type)} is not known in this rig`;
    case 'unknown-mode':
      return finding.mode.trim() === ''
        ? `No mode given for ${quoted(finding.type)}`
        : `Mode ${quoted(finding.mode)} of ${quoted(finding.type)} is not known in this rig`;
    case 'unpatched':
      return finding.part === null ? 'No address yet' : `No address for break ${finding.part}`;
    case 'unreadable':
      return `Cannot read ${quoted(finding.cell.value)} as ${FIELD_WORDS[finding.cell.field]}`;
    case 'no-slots':
      return `Mode ${quoted(finding.mode)} of ${quoted(finding.type)} takes no slot: check it with the manual`;
    case 'firmware-mode':
      return `Firmware ${finding.found} does not have mode ${quoted(finding.mode)}, which needs ${finding.needs.join(' or ')}`;
    case 'firmware-wanted':
      return `Firmware ${firmware === '' ? 'differs' : `is ${firmware}`}; wanted is ${finding.wanted}`;
    default:
      return unreachable(finding);
  }
}

function channelsOf(ids: readonly FixtureId[], rig: Rig): string {
  const channels = ids.slice(0, NAMED).flatMap((id) => getRow(rig.fixtures, id)?.channel ?? []);
  return channels.length === 0 ? '' : ` (channels ${channels.sort((a, b) => a - b).join(', ')})`;
}

/** What each hazard that has to be answered for is called. */
export const SIGNED_HAZARD_NAMES: Readonly<Record<SignedHazard, string>> = {
  laser: 'laser light',
  strobe: 'flashing light',
  ultraviolet: 'ultraviolet light',
  fog: 'fog or haze',
};

const differsSentence = ({ type, here, newest }: Extract<Finding, { rule: 'library-differs' }>) =>
  `${quoted(type)} is here as revision ${here}; the library has revision ${newest}`;

/** The firmware that all units of a finding share; empty when they differ. */
function firmwareOf(finding: Finding, rig: Rig): string {
  const all = new Set(finding.fixtures.map((id) => getRow(rig.fixtures, id)?.firmware ?? ''));
  return all.size === 1 ? ([...all][0] ?? '') : '';
}

const lowerFirst = (text: string) => text.charAt(0).toLowerCase() + text.slice(1);
