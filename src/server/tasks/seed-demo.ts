import * as Y from 'yjs';
import { assert } from '#base/assert.ts';
import type { Result } from '#base/result.ts';
import { DEMO_HOUSE, demoHousePlan } from '#demo/demo-house.ts';
import { DEMO_CREWS, DEMO_PEOPLE } from '#demo/demo-people.ts';
import { DEMO_RIG, demoPlan } from '#demo/demo-rig.ts';
import { demoRevisions } from '#demo/types/demo-types.ts';
import { applyPlan } from '#document/edit/apply-plan.ts';
import { readRig } from '#document/read/rig-reader.ts';
import { diffEdits } from '#engine/diff/diff-edits.ts';
import { diffRigs } from '#engine/diff/rig-diff.ts';
import { applyEdits } from '#engine/model/apply-edits.ts';
import type { Plan } from '#engine/model/edit.ts';
import { EMPTY_RIG, type Rig } from '#engine/model/rig.ts';
import type { Store } from '../db/store.ts';
import { sha256 } from './library/sha256.ts';
import { freezeRig } from './record/freeze-rig.ts';
import { beginAs } from './record/start-rig.ts';
import { seedDemoTypes } from './seed-demo-types.ts';
import { storeNewRig } from './store-new-rig.ts';
import type { TaskContext } from './task-context.ts';

export interface SeedOptions extends Pick<TaskContext, 'store' | 'clock' | 'record' | 'readRigRows'> {
  /** Writes to a rig by the path that everybody's edits take. */
  readonly applyUpdate: (rig: string, author: string, update: Uint8Array) => Promise<Result<number, string>>;
}

const SEEDED = 'demo-seeded';
/** The demo's own peer in its document: the same update, applied twice, changes nothing. Another plan takes another number. */
const SEED_PEER = 20_261_126;

/**
 * Puts the demo's people, crews, venue, fixture types, house rig and show into the store, once: what visitors make of them afterwards stays. Cut off half-way,
 * the next start finishes it.
 */
export async function seedDemo(options: SeedOptions): Promise<'seeded' | 'there already'> {
  const { store, clock } = options;
  if (await store.prisma.setting.findUnique({ where: { key: SEEDED } })) return 'there already';
  await seedPeople(store);
  await seedDemoTypes(options);
  await seedHouse(options);
  await seedShow(options);
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

/** The standing rig of the venue, with its first revision. */
async function seedHouse(options: SeedOptions): Promise<void> {
  const { store, clock } = options;
  const { id, crew: crewId, venue: venueId, name, kind, note } = DEMO_HOUSE;
  const by = DEMO_PEOPLE.technician;
  const at = new Date(clock.now());
  if (!(await store.prisma.rig.findUnique({ where: { id } })))
    await storeNewRig(store, { id, crewId, venueId, name, kind, userId: by.id, at });
  await write(options, id, by.id, demoHousePlan(await demoRevisions(sha256)));
  if (await store.prisma.rigRevision.findFirst({ where: { rigId: id } })) return;
  const accepted = { by: '', keys: [] };
  const frozen = await freezeRig(options, { rigId: id, rigName: name, crewId, by, note, accepted });
  assert(frozen.ok, `the demo's house rig was not frozen: ${JSON.stringify(frozen)}`);
}

/** The show, which began as that revision. */
async function seedShow(options: SeedOptions): Promise<void> {
  const { store, clock } = options;
  const { id, crew: crewId, name, kind } = DEMO_RIG;
  const userId = DEMO_PEOPLE.designer.id;
  if (!(await store.prisma.rig.findUnique({ where: { id } }))) {
    const at = new Date(clock.now());
    const begun = await beginAs(options, { rigId: DEMO_HOUSE.id, number: 1, id, at, way: 'started' });
    assert(begun.ok, `the demo's show was not begun: ${begun.ok ? '' : begun.error}`);
    await storeNewRig(store, { id, crewId, venueId: null, name, kind, userId, at, begin: begun.value });
  }
  await write(options, id, userId, demoPlan(await demoRevisions(sha256)));
}

/** Makes of a rig what a plan makes of an empty one. */
async function write({ store, applyUpdate }: SeedOptions, rigId: string, author: string, plan: Plan): Promise<void> {
  const first = await store.prisma.rigUpdate.findFirst({ where: { rigId }, orderBy: { seq: 'asc' } });
  assert(first, `the demo rig ${rigId} has no first update, but is not seeded`);
  const written = await applyUpdate(rigId, author, demoUpdate(first.bytes, applyEdits(EMPTY_RIG, plan.edits)));
  assert(written.ok, `the demo rig ${rigId} was not written: ${JSON.stringify(written)}`);
}

/** What makes of a document that begins with `first` one that reads as `rig`. */
function demoUpdate(first: Uint8Array, rig: Rig): Uint8Array {
  const doc = new Y.Doc();
  Y.applyUpdate(doc, first);
  const before = Y.encodeStateVector(doc);
  doc.clientID = SEED_PEER;
  const applied = applyPlan(doc, { name: 'import', edits: diffEdits(diffRigs(readRig(doc), rig)) }, 'demo');
  assert(applied.ok, `the demo plan was refused: ${JSON.stringify(applied)}`);
  const update = Y.encodeStateAsUpdate(doc, before);
  doc.destroy();
  return update;
}
