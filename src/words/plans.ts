import { getRow } from '#base/table.ts';
import { unreachable } from '#base/unreachable.ts';
import { formatAddress } from '#engine/address/notation.ts';
import { isAbsolute } from '#engine/model/address.ts';
import type { Plan, PlanName } from '#engine/model/edit.ts';
import { ADDRESS_FIELDS, type CellValue, type Field } from '#engine/model/field.ts';
import type { Fixture } from '#engine/model/fixture.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import { compareNatural } from '#engine/model/natural-order.ts';
import type { Rig } from '#engine/model/rig.ts';
import type { PlanRefusal } from '#engine/patch/plan-refusal.ts';
import { CARD_WORDS } from './cards.ts';
import { FIELD_WORDS, RULE_TITLES, unitName } from './findings.ts';

/** What each plan is called where it is offered, undone or listed. */
export const PLAN_NAMES: Readonly<Record<PlanName, string>> = {
  edit: 'Edit',
  paste: 'Paste',
  fill: 'Fill down',
  series: 'Fill a series',
  insert: 'Insert rows',
  duplicate: 'Duplicate rows',
  remove: 'Remove rows',
  move: 'Move addresses',
  swap: 'Swap addresses',
  place: 'Give the next free addresses',
  'clear-clash': 'Clear a clash',
  allocate: 'Find room for units',
  repair: 'Clear every clash',
  'renumber-channels': 'Renumber channels',
  'renumber-units': 'Renumber units',
  import: 'Bring in a list',
  'set-mode': 'Change a mode',
  'set-position': 'Change a position',
  'set-universe': 'Label a universe',
  'set-note': 'Write a note',
  'take-type': 'Take a type from the library',
  'set-wanted': 'Say which firmware is wanted',
  'sign-hazard': 'Name who answers for a hazard',
  'set-network': 'Change the network',
  'set-run': 'Change a run',
  'set-supply': 'Change a supply or circuit',
  balance: 'Balance the phases',
  'set-limit': 'Say what a position may hold',
  'set-house': 'Change the record of the house',
  'report-fault': 'Report a fault',
  'mend-fault': 'Mark a fault mended',
  'swap-device': 'Swap a device',
  'note-reading': 'Note a reading',
  'set-hire': 'Change a hired item',
  lock: 'Lock or free addresses',
  'put-back': 'Put a value back',
  'go-back': 'Go back to a moment',
  tick: 'Tick a line of what is put back',
  'take-proposal': 'Take what a show proposed',
};

/** Why a plan could not be made, and what to do next. */
export function planRefusalSentence(refusal: PlanRefusal, rig: Rig): string {
  const named = (id: FixtureId) => unitName(getRow(rig.fixtures, id));
  switch (refusal.code) {
    case 'nothing-chosen':
      return 'No unit is chosen. Choose one or more rows first.';
    case 'no-such-fixture':
      return 'A chosen row is gone: someone removed it. Choose again.';
    case 'changes-nothing':
      return 'Nothing would change: it is so already.';
    case 'not-patched':
      return 'None of the chosen units has an address. Give one an address first.';
    case 'mode-unknown':
      return `How many slots ${named(refusal.fixture)} takes is not known. Give it a known type and mode first.`;
    case 'too-wide':
      return `${named(refusal.fixture)} takes ${refusal.slots} slots, more than a universe has. Check its mode.`;
    case 'no-room':
      return `There is no room of ${refusal.slots} slots left for ${named(refusal.fixture)} where you asked. Start from a lower address, or allow more universes.`;
    case 'crosses-end':
      return `${named(refusal.fixture)} would run ${refusal.over} past slot 512 there. Choose a lower slot or another universe.`;
    case 'out-of-range':
      return `${named(refusal.fixture)} would get ${FIELD_WORDS[refusal.field]} ${refusal.value}, which does not exist. Choose other numbers.`;
    case 'bad-number':
      return `${refusal.value} cannot be used here. Give another whole number.`;
    case 'no-series':
      return `The first ${FIELD_WORDS[refusal.field]} starts no series. Fill in a number there first.`;
    case 'not-a-clash':
      return `“${RULE_TITLES[refusal.rule]}” is not cleared by moving a unit.`;
    case 'no-such-mode':
      return `The library’s revision has no mode “${refusal.mode}”. Choose another mode.`;
    case 'too-many-breaks':
      return `Mode “${refusal.mode}” has ${refusal.breaks} breaks, and a unit has addresses for four. It stays as it is.`;
    case 'mode-too-wide':
      return `Mode “${refusal.mode}” takes ${refusal.slots} slots in one break, and a universe has 512. Check the mode in the library.`;
    case 'locked':
      return lockedSentence(getRow(rig.fixtures, refusal.fixture));
    case 'held':
      return `Locked units hold their places: ${heldNames(refusal.fixtures, rig)}. Unlock one of them first.`;
    case 'no-reason':
      return 'A lock says why it is there, or who set it. Write that first.';
    case 'finding-gone':
      return 'This is cleared already.';
    case 'no-convention':
      return 'Nobody has said how sACN numbers and Port-Addresses go together here. Choose a convention first.';
    case 'no-port-address':
      return `Universe ${refusal.universe} has no Port-Address by the convention of this rig. Leave it out, or write one by hand.`;
    case 'no-free-port':
      return `${refusal.node === '' ? 'The node' : refusal.node} has no free port. Say how many ports it has, or empty one.`;
    case 'nothing-unheard':
      return 'No universe is left that travels by a network and that no port listens to. Say first how the universes travel.';
    case 'no-name':
      return 'There is no name. Give it one.';
    case 'name-taken':
      return `“${refusal.name}” is there already. Give it another name.`;
    case 'not-on-run':
      return 'It is not on this run any more: someone changed it. Choose again.';
    case 'no-such-supply':
      return 'The supply is gone: someone took it away.';
    case 'one-phase':
      return `“${refusal.supply}” has one phase, so that there is nothing to balance.`;
    case 'nothing-said':
      return NOTHING_SAID[refusal.of];
    case 'no-such-card':
      return `The ${CARD_WORDS[refusal.card]} is gone: someone took it away. Look at the list again.`;
    case 'no-spare-left':
      return `No “${refusal.type}” is left among the spares. Count them again, or choose another.`;
    default:
      return unreachable(refusal);
  }
}

const NOTHING_SAID: Readonly<Record<Extract<PlanRefusal, { code: 'nothing-said' }>['of'], string>> = {
  fault: 'Nothing is said of what is wrong. Write it in a few words.',
  mending: 'Nothing is said of what was done. Write it in a few words.',
  swap: 'Nothing is said of what comes in. Choose a spare, or write what it is.',
  hours: 'The hours are a number above 0, such as 412. Write what the unit shows.',
  firmware: 'No firmware is written. Write what the unit shows.',
  line: 'There is nothing to add. Write it in one line first.',
};

/** Why an address stays as it is: `Bar 1 · 5 is locked (Ona Reeve): its address stays. Unlock it first.` */
export function lockedSentence(fixture: Fixture | undefined): string {
  const why = fixture?.lock.trim() ?? '';
  return `${unitName(fixture)} is locked${why === '' ? '' : ` (${why})`}: its address stays. Unlock it first.`;
}

/** Locked units by name in natural order, each with its reason, the first few of them. */
export function heldNames(ids: readonly FixtureId[], rig: Rig): string {
  const names = ids.map((id) => {
    const fixture = getRow(rig.fixtures, id);
    const why = fixture?.lock.trim() ?? '';
    return `${unitName(fixture)}${why === '' ? '' : ` (${why})`}`;
  });
  const shown = names.sort(compareNatural).slice(0, HELD_SHOWN);
  const rest = names.length - shown.length;
  return rest > 0 ? `${shown.join(', ')} and ${rest} more` : shown.join(', ');
}

const HELD_SHOWN = 5;

/** A plan that moves start addresses, as it reads on the link that applies it: `move 5 to 2:477`. */
export function movesSentence(plan: Plan, rig: Rig): string {
  const moves = plan.edits.flatMap((edit) =>
    edit.kind === 'set-cell' && isAddressField(edit.field) ? [{ ...edit, to: addressWords(edit.value) }] : [],
  );
  const [first] = moves;
  const units = new Set(moves.map(({ fixture }) => fixture)).size;
  if (first === undefined) return PLAN_NAMES[plan.name].toLowerCase();
  if (units > 1) return `move ${units} units, the first to ${first.to}`;
  return moves.length === 1
    ? `move ${shortName(first.fixture, rig)} to ${first.to}`
    : `move ${shortName(first.fixture, rig)} to ${moves.map(({ to }) => to).join(', ')}`;
}

const isAddressField = (field: Field) => (ADDRESS_FIELDS as readonly Field[]).includes(field);

const addressWords = (value: CellValue) =>
  typeof value === 'number' && isAbsolute(value) ? formatAddress(value) : 'no address';

/** The unit number alone where there is one: the row says where it hangs. */
function shortName(id: FixtureId, rig: Rig): string {
  const fixture = getRow(rig.fixtures, id);
  return fixture === undefined || fixture.unit.trim() === '' ? unitName(fixture) : fixture.unit.trim();
}
