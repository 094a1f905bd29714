import * as Y from 'yjs';
import type { Clock } from '#base/clock.ts';
import type { Rng } from '#base/rng.ts';
import { createRigClient, type RigClient } from '#ui/live/sync/rig-client.ts';
import { type EditModel, marksOf } from './edit-model.ts';
import { clockOf, type Held, type Life } from './held.ts';
import { SimDevice } from './sim-copy.ts';
import type { SimNetwork } from './sim-network.ts';

export interface PageParts {
  readonly clock: Clock;
  readonly rng: Rng;
  readonly held: Held;
  readonly network: SimNetwork;
  readonly model: EditModel;
}

/** One person at one device: a page that may be reloaded at any moment, over storage that stays. */
export class SimPerson {
  online = true;
  doc = new Y.Doc();
  client: RigClient;
  /** Edits made in this page: among what its save state speaks of. */
  private mine = new Set<string>();
  readonly device: SimDevice;
  private life: Life = { alive: true };

  constructor(
    readonly user: string,
    private readonly parts: PageParts,
  ) {
    this.device = new SimDevice(parts.held);
    this.client = this.open();
  }

  private open(): RigClient {
    const { clock, rng, network } = this.parts;
    const life = { alive: true };
    this.life = life;
    this.doc = new Y.Doc();
    this.doc.clientID = 1 + rng.int(2 ** 31);
    this.mine = new Set();
    return createRigClient({
      doc: this.doc,
      connect: network.connectFor(this.user, life, () => this.online),
      copy: this.device.copyFor(life),
      clock: clockOf(clock, life),
      rng,
    });
  }

  edit(): void {
    // As the screen does it: nothing is edited before there is something to see, nor by a reader.
    const { filled, role } = this.client.state();
    if (filled && role !== 'reader') this.mine.add(this.parts.model.edit(this.doc, this.parts.rng));
  }

  toggleOnline(): void {
    this.online = !this.online;
  }

  /** The page dies without a word, and a new one opens. */
  reload(): void {
    this.parts.held.end(this.life, this.parts.rng);
    this.client = this.open();
  }

  /** What its save state claims and is not so; `log` holds what is committed. */
  falseClaims(log: Y.Doc): string[] {
    const { save, unsaved } = this.client.state();
    const committed = marksOf(log);
    const missing = [...this.mine].filter((id) => !committed.has(id));
    if (save === 'saved' && missing.length > 0) return [`${this.user} is told ${missing} are saved`];
    if (save === 'saved' && unsaved > 0) return [`${this.user}: ${unsaved} unsaved, yet saved`];
    if (save !== 'on-this-device' || missing.length === 0) return [];
    const kept = this.onDevice();
    const nowhere = missing.filter((id) => !kept.has(id));
    return nowhere.length > 0 ? [`${this.user} is told ${nowhere} are on this device`] : [];
  }

  /** The edits that a new page would find on the device. */
  onDevice(): ReadonlySet<string> {
    const doc = new Y.Doc();
    const { known, mine } = this.device.content();
    for (const bytes of [...known, ...mine.map((edit) => edit.bytes)]) Y.applyUpdate(doc, bytes);
    return marksOf(doc);
  }

  /** Edits that will not be lost whatever happens to this page now: those it was told are saved or on this device. */
  promised(): ReadonlySet<string> {
    const { save } = this.client.state();
    return save === 'saved' || save === 'on-this-device' ? this.mine : new Set();
  }
}
