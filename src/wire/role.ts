import { z } from 'zod';

/** What a member may do in a crew: a lead runs it, an editor changes its rigs, a reader looks on. */
export const Role = z.enum(['lead', 'editor', 'reader']);
export type Role = z.infer<typeof Role>;
