import { nameKey } from '../model/card.ts';
import type { Finding } from '../model/finding.ts';
import type { FixtureId } from '../model/ids.ts';
import type { PlantTrouble } from '../model/plant-trouble.ts';
import { calledBy } from '../supply/circuit-feed.ts';
import { exceeds } from '../supply/load-rules.ts';
import { heldBy, weightOfUnits } from '../supply/position-loads.ts';
import { hundredths, isOtherwiseTyped } from './circuit-findings.ts';
import type { Group, GroupRule } from './grouped-checker.ts';
import { makeFinding } from './make-finding.ts';

/** What is found of each position that somebody gave a limit. [SP13]–[SP15] */
export const positionRule: GroupRule = {
  kinds: ['limit'],
  isOn: ({ limits }) => limits.size > 0,
  keyOf: (fixture) => nameKey(fixture.position),
  matters: isOtherwiseTyped,
  keys: ({ limits }) => limits.keys(),
  findings,
};

function findings({ key, units, plant }: Group): readonly Finding[] {
  const limit = plant.limits.get(key);
  if (limit === undefined) return [];
  const { person, on } = limit;
  const position = calledBy(key, limit.position);
  const all = [...units].map(({ fixture }) => fixture.id);
  const { kilograms, unknown } = weightOfUnits(units);
  const held = heldBy({ kilograms, limit });
  const troubles: (readonly [PlantTrouble, readonly FixtureId[]])[] = [];
  if (exceeds(held, limit.kilograms)) {
    const over = { position, kilograms: hundredths(held), limit: limit.kilograms, person: person.trim(), on };
    troubles.push([{ rule: 'position-over-limit', ...over }, all]);
  }
  if (unknown.length > 0) troubles.push([{ rule: 'position-weight-unknown', position }, unknown.map(({ id }) => id)]);
  if (person.trim() === '') troubles.push([{ rule: 'limit-unsigned', position, limit: limit.kilograms }, []]);
  return troubles.map(([trouble, fixtures]) => makeFinding(trouble, fixtures));
}
