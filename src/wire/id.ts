import { z } from 'zod';

/** An id this server made, or at least could have made: anything else is refused before it is looked up. */
export const Id = z.string().regex(/^[A-Za-z0-9_-]{1,64}$/, 'This is not an id.');
