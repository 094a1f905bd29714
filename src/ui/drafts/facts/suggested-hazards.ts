import { type FixtureType, HAZARD_KINDS, type HazardKind } from '#engine/model/fixture-type.ts';
import { hazardsOfAttribute } from '#engine/type/attributes.ts';

/** Hazards that the attributes of a type give away and that it does not say yet. */
export function suggestedHazards({ modes, hazards }: FixtureType): readonly HazardKind[] {
  const attributes = new Set(
    modes.flatMap((mode) =>
      mode.channels.flatMap(({ uses }) =>
        uses.flatMap((use) => [use.attribute, ...use.functions.map((each) => each.attribute)]),
      ),
    ),
  );
  const given = new Set<HazardKind>([...attributes].flatMap(hazardsOfAttribute));
  return HAZARD_KINDS.filter((kind) => given.has(kind) && !hazards[kind]);
}
