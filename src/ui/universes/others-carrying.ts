import { getRow } from '#base/table.ts';
import type { OccupancyIndex } from '#engine/address/occupancy-index.ts';
import { type Absolute, isAbsolute, type Universe, universeOf } from '#engine/model/address.ts';
import { ADDRESS_FIELDS } from '#engine/model/field.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';
import { type Landing, landingOf } from '#engine/patch/landing.ts';
import type { PersonHere } from '../live/link.ts';
import { blockKey } from './block-cursor.ts';

/** A block on its way in somebody else’s hand. */
export interface OtherCarrying {
  readonly person: PersonHere;
  readonly fixture: FixtureId;
  /** Key of the block. */
  readonly block: string;
  /** The universe it is in as yet; undefined when it has no address. */
  readonly from: Universe | undefined;
  readonly landing: Landing;
}

/** Who of the others carries which block where. What they say is only shown: nothing is carried by saying so. */
export function othersCarrying(
  people: readonly PersonHere[],
  rig: Rig,
  occupancy: OccupancyIndex,
): readonly OtherCarrying[] {
  return people.flatMap((person) => {
    const { where } = person;
    const part = (ADDRESS_FIELDS as readonly string[]).indexOf(where?.field ?? '') + 1;
    const at = where?.at;
    if (where === null || part === 0 || at === undefined || !isAbsolute(at)) return [];
    const row = getRow(rig.fixtures, where.fixture);
    const landing = row && landingOf(rig, occupancy, { fixture: row.id, part }, at);
    if (row === undefined || landing === undefined) return [];
    const start: Absolute | null = row.addresses[part - 1] ?? null;
    const from = start === null ? undefined : universeOf(start);
    return [{ person, fixture: row.id, block: blockKey({ fixture: row.id, part }), from, landing }];
  });
}
