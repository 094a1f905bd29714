import { nameKey, SETUP_KEY } from '#engine/model/card.ts';
import { setCard } from '#engine/model/card-edits.ts';
import type { Edit } from '#engine/model/edit.ts';
import { GROUPS, type Group } from './demo-groups.ts';

const SUPPLY = 'Stage main';

/** Breakers of circuits that carry a kilowatt a unit; the others are smaller. */
const LARGE = { rating: 20, breaker: 'C20' };
const SMALL = { rating: 16, breaker: 'C16' };
const KILOWATTS: readonly string[] = ['B1', 'BL', 'BR', 'GA', 'DR', 'WG'];

/** Front on line 1, bars on 2, all the rest on 3, as the plugs happened to stand: there is something to balance. */
function phaseOf({ position }: Group): '1' | '2' | '3' {
  if (/bridge|Box/.test(position)) return '1';
  return /^Bar/.test(position) ? '2' : '3';
}

/** How many units share a circuit. */
export const PER_CIRCUIT = 4;

function circuitsOf(group: Group): readonly Edit[] {
  return Array.from({ length: Math.ceil(group.units / PER_CIRCUIT) }, (_, at) => {
    const name = `${group.circuit}-${at + 1}`;
    const breaker = KILOWATTS.includes(group.circuit) ? LARGE : SMALL;
    return setCard('circuit', nameKey(name), { name, supply: SUPPLY, phase: phaseOf(group), ...breaker });
  }).flat();
}

/** What feeds the demo's rig, and what its front bridge may hold by the word of an invented rigger. */
export const FEEDS: readonly Edit[] = [
  ...setCard('setup', SETUP_KEY, { volts: 230, rules: 'the playhouse’s own rules' }),
  ...setCard('supply', nameKey(SUPPLY), { name: SUPPLY, phases: '3', volts: 230, rating: 200 }),
  ...GROUPS.flatMap(circuitsOf),
  ...setCard('limit', nameKey('Front bridge'), {
    position: 'Front bridge',
    kilograms: 320,
    extra: 60,
    person: 'Hollis Brandreth, rigger',
    on: '2026-11-20',
  }),
];
