import { z } from 'zod';
import { FIELDS } from '#engine/model/field.ts';
import { type FixtureId, isId } from '#engine/model/ids.ts';

/** Characters of a name as others see it, at most. */
export const PRESENCE_NAME_LIMIT = 120;
/** Colours that people are told apart by; the screen gives each its look. */
export const PRESENCE_COLOURS = 12;
/** People shown on one rig, at most. */
export const PRESENCE_PEOPLE = 200;

const placeSchema = z.strictObject({
  fixture: z
    .string()
    .max(64)
    .refine(isId, 'no id')
    .transform((id) => id as FixtureId),
  field: z.enum(FIELDS),
});

/** What a person says of themselves: the cell they are in, or none. Who they are is not theirs to say. */
export const presenceClaimSchema = z.strictObject({ cell: placeSchema.nullable() });
export type PresenceClaim = z.infer<typeof presenceClaimSchema>;

/** One person on a rig as the server tells the others: name and colour are the server's word. */
export const presenceSchema = z.strictObject({
  /** Names this visit, not the person: two windows of one person are two. */
  visit: z.string().min(1).max(64),
  name: z.string().max(PRESENCE_NAME_LIMIT),
  colour: z
    .number()
    .int()
    .min(0)
    .max(PRESENCE_COLOURS - 1),
  cell: placeSchema.nullable(),
});
export type Presence = z.infer<typeof presenceSchema>;

/** Everybody on a rig but the reader. */
export const presenceListSchema = z.array(presenceSchema).max(PRESENCE_PEOPLE);
