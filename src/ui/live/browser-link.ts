import type * as Y from 'yjs';
import { systemClock } from '#base/clock.ts';
import { seededRng } from '#base/rng.ts';
import type { RigLink } from './link.ts';
import { browserConnect } from './sync/browser-connect.ts';
import { indexedDbCopy } from './sync/indexed-db-copy.ts';
import { createRigClient } from './sync/rig-client.ts';
import { type SyncLinkOptions, syncLink } from './sync-link.ts';

export interface BrowserLinkOptions extends SyncLinkOptions {
  readonly doc: Y.Doc;
  /** Whose copy on this device it is. */
  readonly user: string;
  /** What names the document on this device. */
  readonly id: string;
  /** The path of its sync socket. */
  readonly path: string;
}

export interface BrowserLink {
  readonly link: RigLink;
  /** Whether a client id of the document is of this device. */
  readonly isMine: (client: number) => boolean;
}

/** Keeps a document in step with the server this page came from and with its copy on this device. */
export function browserLink({ doc, user, id, path, ...options }: BrowserLinkOptions): BrowserLink {
  const [seed = 1] = crypto.getRandomValues(new Uint32Array(1));
  const client = createRigClient({
    doc,
    connect: browserConnect(window.location, path),
    copy: indexedDbCopy(user, id),
    clock: systemClock,
    rng: seededRng(seed),
  });
  const awake = () => {
    if (document.visibilityState === 'visible') client.nudge();
  };
  window.addEventListener('online', awake);
  document.addEventListener('visibilitychange', awake);
  const link = syncLink(client, options);
  return {
    link: {
      ...link,
      close() {
        window.removeEventListener('online', awake);
        document.removeEventListener('visibilitychange', awake);
        link.close();
      },
    },
    isMine: (one) => client.myClients().has(one),
  };
}
