import * as Y from 'yjs';
import { assert } from '#base/assert.ts';
import type { Clock } from '#base/clock.ts';
import type { Result } from '#base/result.ts';
import { DEMO_CREWS, DEMO_PEOPLE } from '#demo/demo-people.ts';
import { DEMO_RIG, demoPlan } from '#demo/demo-rig.ts';
import { demoRevisions } from '#demo/types/demo-types.ts';
import { applyPlan } from '#document/edit/apply-plan.ts';
import type { Plan } from '#engine/model/edit.ts';
import type { Store } from '../db/store.ts';
import { sha256 } from './library/sha256.ts';
import { seedDemoTypes } from './seed-demo-types.ts';
import { storeNewRig } from './store-new-rig.ts';

export interface SeedOptions {
  readonly store: Store;
  readonly clock: Clock;
  /** Writes to a rig by the path that everybody's edits take. */
  readonly applyUpdate: (rig: string, author: string, update: Uint8Array) => Promise<Result<number, string>>;
}

const SEEDED = 'demo-seeded';
/** The demo's own peer in its document: the same update, applied twice, changes nothing. Another plan takes another number. */
const SEED_PEER = 20_261_126;

/**
 * Puts the demo's people, crews, venue, fixture types and show into the store, once: what visitors make of them afterwards stays. Cut off half-way,
 * the next start finishes it.
 */
export async function seedDemo(options: SeedOptions): Promise<'seeded' | 'there already'> {
  const { store, clock } = options;
  if (await store.prisma.setting.findUnique({ where: { key: SEEDED } })) return 'there already';
  await seedPeople(store);
  await seedDemoTypes(options);
  await seedRig(options);
  const value = new Date(clock.now()).toISOString();
  await store.prisma.setting.createMany({ data: [{ key: SEEDED, value }], skipDuplicates: true });
  return 'seeded';
}

async function seedPeople({ prisma }: Store): Promise<void> {
  const memberships = DEMO_CREWS.flatMap(({ id: crewId, members }) => [
    { crewId, userId: DEMO_PEOPLE.designer.id, role: members.designer },
    { crewId, userId: DEMO_PEOPLE.technician.id, role: members.technician },
  ]);
  const venues = DEMO_CREWS.flatMap(({ id: crewId, venues }) => venues.map((venue) => ({ ...venue, crewId })));
  await prisma.$transaction([
    prisma.user.createMany({ data: Object.values(DEMO_PEOPLE), skipDuplicates: true }),
    prisma.crew.createMany({ data: DEMO_CREWS.map(({ id, name }) => ({ id, name })), skipDuplicates: true }),
    prisma.membership.createMany({ data: memberships, skipDuplicates: true }),
    prisma.venue.createMany({ data: venues, skipDuplicates: true }),
  ]);
}

async function seedRig({ store, clock, applyUpdate }: SeedOptions): Promise<void> {
  const { id, crew, name, kind } = DEMO_RIG;
  const userId = DEMO_PEOPLE.designer.id;
  if (!(await store.prisma.rig.findUnique({ where: { id } })))
    await storeNewRig(store, { id, crewId: crew, venueId: null, name, kind, userId, at: new Date(clock.now()) });
  const first = await store.prisma.rigUpdate.findFirst({ where: { rigId: id }, orderBy: { seq: 'asc' } });
  assert(first, 'the demo rig has no first update, but is not seeded');
  const written = await applyUpdate(id, userId, demoUpdate(first.bytes, demoPlan(await demoRevisions(sha256))));
  assert(written.ok, `the demo rig was not written: ${JSON.stringify(written)}`);
}

/** What a plan writes into a document that begins with `first`. */
function demoUpdate(first: Uint8Array, plan: Plan): Uint8Array {
  const doc = new Y.Doc();
  Y.applyUpdate(doc, first);
  const before = Y.encodeStateVector(doc);
  doc.clientID = SEED_PEER;
  const applied = applyPlan(doc, plan, 'demo');
  assert(applied.ok, `the demo plan was refused: ${JSON.stringify(applied)}`);
  const update = Y.encodeStateAsUpdate(doc, before);
  doc.destroy();
  return update;
}
