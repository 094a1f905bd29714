import * as Y from 'yjs';
import { systemClock } from '#base/clock.ts';
import { type Rng, seededRng } from '#base/rng.ts';
import { noCopy } from '#tests/support/no-copy.ts';
import { openSocket } from '#tests/support/sync-server.ts';
import { wsConnect } from '#tests/support/ws-connect.ts';
import { createRigClient } from '#ui/live/sync/rig-client.ts';

/** Some people who edit one rig as fast as they may, each in a page that keeps nothing. */
export interface Editors {
  /** Resolves once everybody has what the server has; the edits it holds. */
  readonly filled: Promise<ReadonlySet<string>>;
  start(): void;
  /** The edits that somebody was told are saved. */
  acknowledged(): readonly string[];
  close(): Promise<void>;
}

const EDIT_EVERY_MS = 4;

export function openEditors(
  port: number,
  rig: string,
  { count, name, rng }: { readonly count: number; readonly name: string; readonly rng: Rng },
): Editors {
  const editors = Array.from({ length: count }, (_, nth) => openEditor(port, rig, `${name}-${nth}`, rng));
  return {
    filled: Promise.all(editors.map((editor) => editor.filled)).then(([first]) => first ?? new Set()),
    start: () => {
      for (const editor of editors) editor.start();
    },
    acknowledged: () => editors.flatMap((editor) => editor.acknowledged()),
    close: async () => void (await Promise.all(editors.map((editor) => editor.close()))),
  };
}

function openEditor(port: number, rig: string, user: string, rng: Rng) {
  const doc = new Y.Doc();
  const client = createRigClient({
    doc,
    connect: wsConnect(() => openSocket(port, rig, { user })),
    copy: noCopy,
    clock: systemClock,
    rng: seededRng(rng.int(2 ** 31)),
  });
  const edits: string[] = [];
  let timer: NodeJS.Timeout | undefined;
  const edit = () => {
    const id = `${user}-${edits.length}`;
    edits.push(id);
    doc.transact(() => {
      doc.getMap('cells').set(`c${rng.int(50)}`, id);
      doc.getMap('marks').set(id, true);
    });
  };
  const filled = new Promise<ReadonlySet<string>>((resolve) => {
    const stop = client.subscribe(() => {
      if (!client.state().filled) return;
      stop();
      resolve(new Set(doc.getMap('marks').keys()));
    });
  });
  return {
    filled,
    start: () => {
      timer = setInterval(edit, EDIT_EVERY_MS);
    },
    // Edits are acknowledged in their order.
    acknowledged: () => edits.slice(0, edits.length - client.state().unsaved),
    close: () => {
      clearInterval(timer);
      return client.close();
    },
  };
}
