import { join } from 'node:path';
import { startPortProcess } from '#tests/support/port-process.ts';
import type { StoreKind } from '#tests/support/store.ts';
import { makeStorePlace } from '#tests/support/store-place.ts';
import { type Crowd, type CrowdTimes, runCrowd } from './run-crowd.ts';
import type { CrowdOrders } from './server-process.ts';

const SERVER = join(import.meta.dirname, 'server-process.ts');

/** One crowd against one server process of its own. */
export async function measureCrowd(kind: StoreKind, manner: CrowdOrders['manner'], crowd: Crowd): Promise<CrowdTimes> {
  const { store, root, rig, remove } = await makeStorePlace(kind);
  const server = await startPortProcess(SERVER, { manner, store, root } satisfies CrowdOrders);
  try {
    return await runCrowd(server.port, rig, crowd, manner === 'relay' ? 'relay' : 'sync');
  } finally {
    await server.kill();
    await remove();
  }
}
