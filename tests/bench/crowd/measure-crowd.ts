import { join } from 'node:path';
import * as Y from 'yjs';
import { openStore } from '#server/db/open-store.ts';
import { startPortProcess } from '#tests/support/port-process.ts';
import type { StoreKind } from '#tests/support/store.ts';
import { makeStorePlace, type StorePlace } from '#tests/support/store-place.ts';
import { largeRig } from '../frame/large-rig.ts';
import { documentOf } from '../frame/rig-document.ts';
import { type Crowd, type CrowdTimes, runCrowd } from './run-crowd.ts';
import type { CrowdOrders } from './server-process.ts';

const SERVER = join(import.meta.dirname, 'server-process.ts');

/** One crowd against one server process of its own. */
export async function measureCrowd(kind: StoreKind, manner: CrowdOrders['manner'], crowd: Crowd): Promise<CrowdTimes> {
  const place = await makeStorePlace(kind);
  try {
    return await against(place, { manner, store: place.store, root: place.root }, crowd);
  } finally {
    await place.remove();
  }
}

/** The same on a rig of so many units, which is frozen all the while or not; and how often it was. */
export async function measureFreezing(
  kind: StoreKind,
  { units, freezing }: { readonly units: number; readonly freezing: boolean },
  crowd: Crowd,
): Promise<CrowdTimes & { readonly revisions: number }> {
  const place = await makeStorePlace(kind);
  try {
    await fill(place, units);
    const { store, root, rig } = place;
    const orders = { manner: 'sync', store, root, ...(freezing ? { freezing: rig } : {}) } as const;
    const times = await against(place, orders, crowd);
    return { ...times, revisions: await revisionsIn(place) };
  } finally {
    await place.remove();
  }
}

async function against({ rig }: StorePlace, orders: CrowdOrders, crowd: Crowd): Promise<CrowdTimes> {
  const server = await startPortProcess(SERVER, orders);
  try {
    return await runCrowd(server.port, rig, crowd, orders.manner === 'relay' ? 'relay' : 'sync');
  } finally {
    await server.kill();
  }
}

const open = ({ store, root }: StorePlace) => openStore(store, { root, onLost: () => undefined });

async function fill(place: StorePlace, units: number): Promise<void> {
  const store = await open(place);
  const rig = largeRig({ fixtures: units, perUniverse: 25, clashing: 0, seed: 7 });
  const bytes = Uint8Array.from(Y.encodeStateAsUpdate(documentOf(rig)));
  const { head } = await store.prisma.rig.update({ where: { id: place.rig }, data: { head: { increment: 1 } } });
  await store.prisma.rigUpdate.create({
    data: { rigId: place.rig, seq: head, author: 'somebody', at: new Date(), bytes },
  });
  await store.close();
}

async function revisionsIn(place: StorePlace): Promise<number> {
  const store = await open(place);
  const count = await store.prisma.rigRevision.count({ where: { rigId: place.rig } });
  await store.close();
  return count;
}
