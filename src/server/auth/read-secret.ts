import { randomBytes } from 'node:crypto';
import type { Store } from '../db/store.ts';

const KEY = 'auth-secret';

/**
 * The secret that signs cookies: made once and kept in the store, so that sessions outlive a restart and all processes on one store
 * agree. `AUTH_SECRET` in the environment goes before it.
 */
export async function readSecret(store: Store): Promise<string> {
  const made = { key: KEY, value: randomBytes(32).toString('base64url') };
  await store.prisma.setting.createMany({ data: [made], skipDuplicates: true });
  return (await store.prisma.setting.findUniqueOrThrow({ where: { key: KEY } })).value;
}
