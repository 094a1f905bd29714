import { ListMapping, RecallMapping } from '#wire/list-mappings.ts';
import { inCrew } from '../procedures.ts';

/** How the crew read a list of this layout the last time; null when it never did. */
export const recallMapping = inCrew('list-mapping.read')
  .input(RecallMapping)
  .query(async ({ ctx, input }): Promise<{ mapping: ListMapping } | null> => {
    const { crewId, key } = input;
    const found = await ctx.store.prisma.listMapping.findUnique({ where: { crewId_key: { crewId, key } } });
    return found ? { mapping: ListMapping.parse(found.mapping) } : null;
  });
