import { z } from 'zod';
import { CAPS } from './caps.ts';
import { Id } from './id.ts';

/** Tells lists of one layout apart: made by the importer from the headings of a list. */
const ListKey = z.string().min(1).max(CAPS.listKeyLength);

/** How the columns of a list are read. Its shape is the importer's business; here it only has to be JSON of a sane size. */
export const ListMapping = z.json().refine((value) => JSON.stringify(value).length <= CAPS.listMappingLength, {
  message: 'This column mapping is too large to remember.',
});

export const RecallMapping = z.object({ crewId: Id, key: ListKey });
export const RememberMapping = z.object({ crewId: Id, key: ListKey, mapping: ListMapping });

export type ListMapping = z.infer<typeof ListMapping>;
