import { assert } from '#base/assert.ts';
import type { Clock } from '#base/clock.ts';
import { DEMO_PEOPLE } from '#demo/demo-people.ts';
import { DEMO_RIG } from '#demo/demo-rig.ts';
import { DEMO_TYPES, type DemoType } from '#demo/types/demo-types.ts';
import type { Store } from '../db/store.ts';
import { addRevision } from './library/add-revision.ts';
import { revisionContent } from './library/revision-content.ts';
import { lockCrew } from './lock-crew.ts';

interface SeedTypesOptions {
  readonly store: Store;
  readonly clock: Clock;
}

/** Puts the demo's fixture types into the library of its crew. Those that are there already stay as they are. */
export async function seedDemoTypes(options: SeedTypesOptions): Promise<void> {
  for (const type of DEMO_TYPES) await seedType(options, type);
}

async function seedType({ store, clock }: SeedTypesOptions, { id, revisions }: DemoType): Promise<void> {
  const { crew: crewId } = DEMO_RIG;
  const userId = DEMO_PEOPLE.designer.id;
  const at = new Date(clock.now());
  const contents = await Promise.all(
    revisions.map(async ({ type, note }) => ({ note, content: await revisionContent(type, null) })),
  );
  await store.prisma.$transaction(async (tx) => {
    await lockCrew(tx, crewId);
    if (await tx.fixtureType.findUnique({ where: { id } })) return;
    for (const [newest, { note, content }] of contents.entries()) {
      const onto = newest === 0 ? null : { id, newest };
      const added = await addRevision(tx, onto, { crewId, userId, at, origin: 'draft', note, content, newId: id });
      assert(added.ok, `the demo's type ${id} was not put in: ${JSON.stringify(added)}`);
    }
  });
}
