import { CAPS } from '#wire/caps.ts';
import type { ListMapping } from '#wire/list-mappings.ts';
import { Prisma } from '../db/generated/client.ts';
import type { TaskContext } from './task-context.ts';

interface Remembered {
  readonly crewId: string;
  readonly key: string;
  readonly mapping: ListMapping;
}

/** Keeps a column mapping; past the cap the crew forgets those it has not used for longest. */
export async function rememberMapping(
  { store, clock }: TaskContext,
  { crewId, key, mapping }: Remembered,
): Promise<null> {
  const data = { mapping: mapping ?? Prisma.JsonNull, updatedAt: new Date(clock.now()) };
  await store.prisma.listMapping.upsert({
    where: { crewId_key: { crewId, key } },
    create: { crewId, key, ...data },
    update: data,
  });
  const old = await store.prisma.listMapping.findMany({
    where: { crewId },
    orderBy: [{ updatedAt: 'desc' }, { key: 'asc' }],
    skip: CAPS.listMappingsPerCrew,
    select: { key: true },
  });
  if (old.length > 0)
    await store.prisma.listMapping.deleteMany({ where: { crewId, key: { in: old.map((row) => row.key) } } });
  return null;
}
