import * as Y from 'yjs';
import { systemClock } from '#base/clock.ts';
import { seededRng } from '#base/rng.ts';
import { openRigStore, type RigStore } from './rig-store.ts';
import { browserConnect } from './sync/browser-connect.ts';
import { indexedDbCopy } from './sync/indexed-db-copy.ts';
import { createRigClient } from './sync/rig-client.ts';
import { type KnownRole, syncLink } from './sync-link.ts';

/** What is done on this screen, as opposed to what arrives. */
const MINE = Symbol('mine');

/** Opens a rig of the server this page came from, for one person, with its copy on this device. */
export function connectRig(user: string, rig: string, known: KnownRole): RigStore {
  const doc = new Y.Doc();
  const [seed = 1] = crypto.getRandomValues(new Uint32Array(1));
  const client = createRigClient({
    doc,
    connect: browserConnect(window.location, rig),
    copy: indexedDbCopy(user, rig),
    clock: systemClock,
    rng: seededRng(seed),
  });
  const awake = () => {
    if (document.visibilityState === 'visible') client.nudge();
  };
  window.addEventListener('online', awake);
  document.addEventListener('visibilitychange', awake);
  const link = syncLink(client, known);
  const store = openRigStore({
    doc,
    link: {
      ...link,
      close() {
        window.removeEventListener('online', awake);
        document.removeEventListener('visibilitychange', awake);
        link.close();
      },
    },
    origin: MINE,
    isMine: (id) => client.myClients().has(id),
    clock: systemClock,
  });
  return store;
}
