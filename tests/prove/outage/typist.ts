import * as Y from 'yjs';
import { systemClock } from '#base/clock.ts';
import { seededRng } from '#base/rng.ts';
import { openSocket } from '#tests/support/sync-server.ts';
import { wsConnect } from '#tests/support/ws-connect.ts';
import { SimDevice } from '#tests/sync/sim-copy.ts';
import { createRigClient, type RigClient } from '#ui/live/sync/rig-client.ts';
import type { SaveState } from '#ui/live/sync/sync-state.ts';

const atOnce = { hold: <T>(_life: unknown, work: () => Promise<T>): Promise<T> => work() };

export interface TypistPlace {
  readonly port: number;
  readonly rig: string;
  /** The edits that are committed. */
  readonly committed: () => ReadonlySet<string>;
}

/** Somebody at a device who types, closes the page, opens it again, and is lied to or not. */
export class Typist {
  readonly typed: string[] = [];
  readonly lies: string[] = [];
  /** Every save state that was shown. */
  readonly shown = new Set<SaveState>();
  private readonly device = new SimDevice(atOnce);
  private page: { readonly client: RigClient; readonly doc: Y.Doc } | undefined;

  constructor(
    readonly user: string,
    private readonly place: TypistPlace,
  ) {}

  open(): void {
    const { port, rig } = this.place;
    const doc = new Y.Doc();
    const client = createRigClient({
      doc,
      connect: wsConnect(() => openSocket(port, rig, { user: this.user })),
      copy: this.device.copyFor({ alive: true }),
      clock: systemClock,
      rng: seededRng(this.typed.length + 1),
    });
    this.page = { client, doc };
    client.subscribe(() => this.look());
  }

  private look(): void {
    const state = this.page?.client.state();
    // Before the device has been read, a page speaks only of what was typed in it.
    if (!state || state.link === 'loading') return;
    this.shown.add(state.save);
    if (state.save !== 'saved') return;
    const committed = this.place.committed();
    const missing = this.typed.filter((id) => !committed.has(id));
    if (missing.length > 0) this.lies.push(`${this.user} was told 'saved' with ${missing.length} edits not committed`);
  }

  type(): void {
    if (!this.page) return;
    const id = `${this.user}-${this.typed.length}`;
    this.typed.push(id);
    const { doc } = this.page;
    doc.transact(() => {
      doc.getMap('cells').set(`c${this.typed.length % 7}`, id);
      doc.getMap('marks').set(id, true);
    });
  }

  /** Has nothing that the server has not acknowledged, and is connected. */
  get atRest(): boolean {
    const state = this.page?.client.state();
    return state?.link === 'live' && state.save === 'saved';
  }

  nudge(): void {
    this.page?.client.nudge();
  }

  async close(): Promise<void> {
    await this.page?.client.close();
    this.page = undefined;
  }
}
