import * as Y from 'yjs';
import type { Clock } from '#base/clock.ts';
import type { Rng } from '#base/rng.ts';
import { unreachable } from '#base/unreachable.ts';
import type { Person, ServerMessage, SyncRole, Where } from '#wire/sync/message.ts';
import { type CopyKeeper, createCopyKeeper } from './copy-keeper.ts';
import { createLink, type LinkToServer } from './link.ts';
import type { CopiedRig, LocalCopy } from './local-copy.ts';
import { createOutbox, outboxCovers } from './outbox.ts';
import { createPeopleHere } from './people-here.ts';
import { saveStateOf } from './save-state.ts';
import { createSender, type Sender } from './sender.ts';
import { SYNC_ORIGIN } from './sync-origin.ts';
import type { SyncState } from './sync-state.ts';
import type { Connect } from './transport.ts';

export interface RigClientOptions {
  /** The document to keep in step; every update of it that comes from elsewhere than this client is an edit of mine. */
  readonly doc: Y.Doc;
  readonly connect: Connect;
  readonly copy: LocalCopy;
  readonly clock: Clock;
  readonly rng: Rng;
}

/** Keeps one document in step with the server and with its copy on this device, and says plainly where my edits are. */
export interface RigClient {
  /** The same object until something changes. */
  state(): SyncState;
  subscribe(listener: () => void): () => void;
  /** Tells the others which cell I am in. */
  setWhere(where: Where | null): void;
  /** The network or the page is back, or the person has signed in again: try now. */
  nudge(): void;
  /** Client ids that edited this rig on this device, in this and in earlier pages. */
  myClients(): ReadonlySet<number>;
  /** Writes what is left to the copy on this device and ends the connection. */
  close(): Promise<void>;
}

/** How long the connection waits for the copy on this device to be read, in milliseconds. */
const COPY_PATIENCE_MS = 3_000;
const COPY_RETRY_MS = 10_000;

export function createRigClient(options: RigClientOptions): RigClient {
  return new LiveRig(options);
}

class LiveRig implements RigClient {
  private readonly outbox = createOutbox();
  private readonly people = createPeopleHere();
  private readonly listeners = new Set<() => void>();
  private readonly clients: Set<number>;
  private readonly keeper: CopyKeeper;
  private readonly sender: Sender;
  private readonly loading: Promise<void>;
  private stopWaiting: () => void;
  private link: LinkToServer | undefined;
  private role: SyncRole | undefined;
  private filled = false;
  private seq = 0;
  private serverHad: Uint8Array = Y.encodeStateVector(new Map());
  private closed = false;
  private current: SyncState;

  constructor(private readonly options: RigClientOptions) {
    const { doc, copy, clock } = options;
    const changed = () => this.changed();
    this.clients = new Set([doc.clientID]);
    this.keeper = createCopyKeeper({ copy, doc, clock, changed });
    this.sender = createSender({
      clock,
      outbox: this.outbox,
      mayAct: () => this.live,
      mayEdit: () => this.role === 'writer',
      send: (message) => this.link?.send(message),
      difference: () => Y.encodeStateAsUpdate(doc, this.serverHad),
      changed,
    });
    this.current = this.snapshot();
    doc.on('update', this.edited);
    this.stopWaiting = clock.after(COPY_PATIENCE_MS, () => this.goOnline());
    this.loading = this.load();
  }

  private get live(): boolean {
    return this.link?.phase === 'live';
  }

  private async load(): Promise<void> {
    const answer = await this.options.copy.load();
    this.stopWaiting();
    if (this.closed) return;
    if (answer.ok) this.fill(answer.value);
    else {
      this.keeper.broken(answer.error);
      // What is there may be the only copy of an edit: it is read as soon as it can be.
      if (answer.error !== 'missing')
        this.stopWaiting = this.options.clock.after(COPY_RETRY_MS, () => void this.load());
    }
    this.goOnline();
    this.changed();
  }

  private fill(copied: CopiedRig): void {
    const updates = [...copied.known, ...copied.mine.map((edit) => edit.bytes)];
    this.apply(updates, SYNC_ORIGIN.copy);
    for (const edit of copied.mine) this.outbox.add(edit.bytes, edit.key);
    for (const client of copied.clients) this.clients.add(client);
    this.seq = Math.max(this.seq, copied.seq);
    this.filled ||= updates.length > 0;
    this.sender.flush();
  }

  private apply(updates: readonly Uint8Array[], origin: symbol): void {
    const { doc } = this.options;
    doc.transact(() => {
      for (const bytes of updates) Y.applyUpdate(doc, bytes, origin);
    }, origin);
  }

  private goOnline(): void {
    if (this.link || this.closed) return;
    const { doc, connect, clock, rng } = this.options;
    this.link = createLink({
      connect,
      clock,
      rng,
      have: () => Y.encodeStateVector(doc),
      message: (message) => this.hear(message),
      changed: () => this.changed(),
    });
    this.changed();
  }

  private readonly edited = (bytes: Uint8Array, origin: unknown): void => {
    if (origin === SYNC_ORIGIN.server || origin === SYNC_ORIGIN.copy) return;
    this.keeper.keep(this.outbox.add(bytes, undefined));
    this.sender.flush();
    this.changed();
  };

  private hear(message: ServerMessage): void {
    switch (message.kind) {
      case 'welcome':
        this.welcomed(message);
        break;
      case 'updates':
        this.apply(message.list, SYNC_ORIGIN.server);
        for (const bytes of message.list) this.keeper.learn(bytes, message.seq);
        this.seq = message.seq;
        break;
      case 'ack':
        this.keeper.acknowledged(this.outbox.acknowledge(message.counter), message.seq);
        this.seq = Math.max(this.seq, message.seq);
        break;
      case 'people':
        this.people.news(message);
        break;
      case 'role':
        this.role = message.role;
        this.sender.flush();
        break;
      case 'pong':
        break;
      default:
        unreachable(message);
    }
    this.changed();
  }

  private welcomed(welcome: ServerMessage & { readonly kind: 'welcome' }): void {
    const { doc } = this.options;
    this.apply([welcome.missing], SYNC_ORIGIN.server);
    this.keeper.learn(welcome.missing, welcome.seq);
    const covered = outboxCovers(this.outbox.entries, doc, Y.decodeStateVector(welcome.have));
    // The server has lost what it had acknowledged: whoever may write brings it back.
    if (welcome.role === 'writer' && (welcome.seq < this.seq || !covered))
      this.keeper.keep(this.outbox.add(Y.encodeStateAsUpdate(doc, welcome.have), undefined));
    this.serverHad = welcome.have;
    this.seq = welcome.seq;
    this.role = welcome.role;
    this.filled = true;
    this.people.welcome(welcome);
    this.sender.restart();
  }

  private changed(): void {
    const next = this.snapshot();
    if (sameState(next, this.current)) return;
    this.current = next;
    for (const listener of [...this.listeners]) listener();
  }

  private snapshot(): SyncState {
    const { link, outbox, sender, keeper, role } = this;
    return {
      link: link?.phase ?? 'loading',
      trouble: link?.trouble ?? (sender.tooLarge ? 'too-large' : undefined),
      role,
      save: saveStateOf({
        entries: outbox.entries,
        goingOut: this.live && role === 'writer' && !sender.tooLarge,
        copyTrouble: keeper.trouble,
      }),
      unsaved: outbox.entries.length,
      copyTrouble: keeper.trouble,
      filled: this.filled,
      people: this.live ? this.people.list() : NOBODY,
      me: this.live ? this.people.me() : undefined,
      seq: this.seq,
    };
  }

  state(): SyncState {
    return this.current;
  }

  subscribe(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  setWhere(where: Where | null): void {
    this.sender.setWhere(where);
  }

  nudge(): void {
    this.link?.nudge();
  }

  myClients(): ReadonlySet<number> {
    return this.clients;
  }

  async close(): Promise<void> {
    this.closed = true;
    this.stopWaiting();
    this.options.doc.off('update', this.edited);
    this.sender.stop();
    this.link?.close();
    await this.loading;
    await this.keeper.flush();
    this.options.copy.close();
  }
}

const NOBODY: readonly Person[] = [];

function sameState(a: SyncState, b: SyncState): boolean {
  return (Object.keys(a) as (keyof SyncState)[]).every((key) => a[key] === b[key]);
}
