import type { Me } from '#wire/me.ts';
import { open } from '../procedures.ts';

/** Who is asking, and what kind of installation answers. */
export const getMe = open.query(
  ({ ctx }): Me => ({ user: ctx.user, demo: ctx.demo, secure: ctx.secure, store: ctx.store.kind }),
);
