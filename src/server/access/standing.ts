import type { Role } from '#wire/role.ts';
import type { Store } from '../db/store.ts';

/** A crew as one of its members stands in it. */
export interface CrewStanding {
  readonly crewId: string;
  readonly crewName: string;
  readonly role: Role;
}

/** A rig as a member of its crew stands to it. */
export interface RigStanding extends CrewStanding {
  readonly rigId: string;
  readonly rigName: string;
}

/** A draft of a fixture type as a member of its crew stands to it. */
export interface DraftStanding extends CrewStanding {
  readonly draftId: string;
  readonly state: 'open' | 'published' | 'dropped';
}

/**
 * What a person is in a crew. Undefined for a crew that is not theirs and for one that does not exist: one query answers both, so
 * that neither the words nor the time tell them apart.
 */
export async function standingInCrew(store: Store, userId: string, crewId: string): Promise<CrewStanding | undefined> {
  const [row] = await store.sql.query<CrewStanding>(
    `select c.id as "crewId", c.name as "crewName", m.role::text as role
       from membership m join crew c on c.id = m.crew_id
      where m.user_id = $1 and m.crew_id = $2`,
    [userId, crewId],
  );
  return row;
}

/** What a person is to a rig, through its crew. Undefined for a foreign, a removed and a missing rig alike. */
export async function standingOnRig(store: Store, userId: string, rigId: string): Promise<RigStanding | undefined> {
  const [row] = await store.sql.query<RigStanding>(`${RIG_STANDING} and r.removed_at is null`, [userId, rigId]);
  return row;
}

/** What a person is to a rig that was removed. Undefined for a foreign, a missing and any other rig alike. */
export async function standingOnRemovedRig(
  store: Store,
  userId: string,
  rigId: string,
): Promise<RigStanding | undefined> {
  const [row] = await store.sql.query<RigStanding>(`${RIG_STANDING} and r.removed_at is not null`, [userId, rigId]);
  return row;
}

const RIG_STANDING = `
  select c.id as "crewId", c.name as "crewName", m.role::text as role, r.id as "rigId", r.name as "rigName"
    from rig r join membership m on m.crew_id = r.crew_id join crew c on c.id = r.crew_id
   where m.user_id = $1 and r.id = $2`;

/** What a person is to a draft, through its crew. Undefined for a foreign and a missing draft alike. */
export async function standingOnDraft(
  store: Store,
  userId: string,
  draftId: string,
): Promise<DraftStanding | undefined> {
  const [row] = await store.sql.query<DraftStanding>(
    `select c.id as "crewId", c.name as "crewName", m.role::text as role, d.id as "draftId", d.state::text as state
       from type_draft d join membership m on m.crew_id = d.crew_id join crew c on c.id = d.crew_id
      where m.user_id = $1 and d.id = $2`,
    [userId, draftId],
  );
  return row;
}
