import type { Provenance } from '#wire/record.ts';
import type { RigKind, RigSummary } from '#wire/rigs.ts';
import type { Role } from '#wire/role.ts';
import type { Store } from '../db/store.ts';

interface Row {
  readonly id: string;
  readonly name: string;
  readonly kind: RigKind;
  readonly crewId: string;
  readonly crewName: string;
  readonly venueId: string | null;
  readonly venueName: string | null;
  readonly role: Role;
  readonly changedAt: Date;
  readonly startedFrom: Provenance | null;
}

/** The rigs of a person's crews, or only `rigId` among them; the last changed first. */
export async function rigSummaries(
  store: Store,
  { userId, rigId }: { readonly userId: string; readonly rigId?: string },
): Promise<readonly RigSummary[]> {
  const rows = await store.sql.query<Row>(
    `select r.id, r.name, r.kind::text as kind, r.crew_id as "crewId", c.name as "crewName",
            r.venue_id as "venueId", r.started_from as "startedFrom", v.name as "venueName", m.role::text as role,
            greatest(
              r.created_at,
              (select u.at from rig_update u where u.rig_id = r.id order by u.seq desc limit 1),
              (select p.at from rig_checkpoint p where p.rig_id = r.id order by p.seq desc limit 1)
            ) as "changedAt"
       from rig r
       join membership m on m.crew_id = r.crew_id and m.user_id = $1
       join crew c on c.id = r.crew_id
       left join venue v on v.id = r.venue_id
      where r.removed_at is null and ($2::text is null or r.id = $2)
      order by "changedAt" desc, r.name, r.id`,
    [userId, rigId ?? null],
  );
  return rows.map((row) => ({ ...row, changedAt: row.changedAt.toISOString() }));
}
