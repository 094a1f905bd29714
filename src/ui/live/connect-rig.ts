import * as Y from 'yjs';
import { systemClock } from '#base/clock.ts';
import { syncPath } from '#wire/sync/message.ts';
import { STATUS_WORDS } from '#words/sheet.ts';
import { browserLink } from './browser-link.ts';
import { openRigStore, type RigStore } from './rig-store.ts';
import type { KnownRole } from './sync-link.ts';

/** What is done on this screen, as opposed to what arrives. */
const MINE = Symbol('mine');

/** Opens a rig of the server this page came from, for one person, with its copy on this device. */
export function connectRig(user: string, rig: string, known: KnownRole): RigStore {
  const doc = new Y.Doc();
  const { link, isMine } = browserLink({
    doc,
    user,
    id: rig,
    path: syncPath(rig),
    known,
    gone: STATUS_WORDS.noSuchRig,
  });
  return openRigStore({ doc, link, origin: MINE, isMine, clock: systemClock });
}
