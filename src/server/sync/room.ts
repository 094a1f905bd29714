import * as Y from 'yjs';
import type { Clock } from '#base/clock.ts';
import { CLOSE, type CloseCode } from '#wire/sync/close-code.ts';
import type { Person, ServerMessage, Where } from '#wire/sync/message.ts';
import { encodeServerMessage } from '#wire/sync/server-message.ts';
import { checkUpdate, type Reach } from '../stored/check-update.ts';
import { type LoadedRig, tryApply } from '../stored/load-rig.ts';
import type { Connection } from './connection.ts';
import type { Appender, GroupCommit } from './group-commit.ts';
import { createPeople } from './people.ts';
import type { Probe } from './probe.ts';
import type { Fence, NewUpdate } from './update-log.ts';

/** Who waits for an update to be committed: a connection for its counter, or a caller in this process. */
export type Submitted =
  | { readonly kind: 'peer'; readonly connection: Connection; readonly counter: number }
  | { readonly kind: 'caller'; readonly settle: (outcome: number | Error) => void };

export interface RoomOptions {
  readonly rig: string;
  readonly fence: Fence;
  readonly loaded: LoadedRig;
  readonly clock: Clock;
  readonly commit: GroupCommit<Submitted>;
  readonly probe: Probe;
  /** Nobody may use this room any more: its memory may differ from the log. */
  readonly onLost: (room: Room, reason: 'fenced' | 'store', error: Error) => void;
  readonly onCommitted: (room: Room) => void;
  /** The last connection has left and nothing is on its way to the log. */
  readonly onQuiet: (room: Room) => void;
}

/**
 * One rig in memory. Its document holds exactly what the log holds: an update is appended first, and applied, acknowledged and sent on
 * only once it is committed.
 */
export class Room implements Appender<Submitted> {
  readonly doc: Y.Doc;
  seq: number;
  /** What the log holds after its newest checkpoint, as far as this process knows. */
  private tail: { readonly rows: number; readonly bytes: number };
  private checkpointBytes: number;
  private readonly connections = new Map<Connection, Person>();
  private readonly people;
  private pending: Submitted[] = [];
  /** How far the document will reach once everything on its way is applied. */
  private readonly known: Reach;
  private lost = false;

  constructor(private readonly options: RoomOptions) {
    const { loaded, clock } = options;
    this.doc = loaded.doc;
    this.seq = loaded.seq;
    this.tail = { rows: loaded.tailRows, bytes: loaded.tailBytes };
    this.checkpointBytes = loaded.checkpointBytes;
    this.known = Y.decodeStateVector(Y.encodeStateVector(loaded.doc));
    this.people = createPeople(clock, (news) => this.tell(encodeServerMessage(news)));
  }

  get rig(): string {
    return this.options.rig;
  }

  get fence(): Fence {
    return this.options.fence;
  }

  /** False once its memory may differ from the log. */
  get usable(): boolean {
    return !this.lost;
  }

  /**
   * Whether reading the rig back has become dear enough for a checkpoint: `rows` updates after the last one, and, since a checkpoint
   * writes the whole document, a quarter of its size.
   */
  wantsCheckpoint(rows: number): boolean {
    return this.tail.rows >= rows && this.tail.bytes * 4 >= this.checkpointBytes;
  }

  /** Starts counting anew; called when a checkpoint begins, so that one that fails is tried again after as many rows. */
  startCheckpoint(): void {
    this.checkpointBytes += this.tail.bytes;
    this.tail = { rows: 0, bytes: 0 };
  }

  get quiet(): boolean {
    return this.connections.size === 0 && this.pending.length === 0;
  }

  /** Lets a connection in and tells it everything it lacks. `have` is its state vector. */
  enter(connection: Connection, have: Uint8Array): void {
    const missing = missingFor(this.doc, have);
    if (missing === undefined) {
      connection.close(CLOSE.malformed);
      return;
    }
    const person = this.people.enter(connection.pass);
    this.connections.set(connection, person);
    const welcome: ServerMessage = {
      kind: 'welcome',
      role: connection.pass.role,
      seq: this.seq,
      me: person.id,
      missing,
      have: Y.encodeStateVector(this.doc),
      people: this.people.list(),
    };
    connection.sendDocument(encodeServerMessage(welcome));
  }

  holds(connection: Connection): boolean {
    return this.connections.has(connection);
  }

  leave(connection: Connection): void {
    const person = this.connections.get(connection);
    if (!person) return;
    this.connections.delete(connection);
    this.people.leave(person.id);
    if (this.quiet && !this.lost) this.options.onQuiet(this);
  }

  move(connection: Connection, where: Where | null): void {
    const person = this.connections.get(connection);
    if (person) this.people.move(person.id, where);
  }

  /**
   * Checks an update and hands it to the group commit. `gap`: it builds on something the log has not (the sender must come back and
   * send all it has); `full`: too much waits for the store.
   */
  submit(bytes: Uint8Array, author: string, from: Submitted): 'taken' | 'malformed' | 'gap' | 'full' {
    const reach = checkUpdate(bytes, this.known);
    if (!reach.ok) return reach.error;
    const update = { rig: this.rig, author, at: new Date(this.options.clock.now()), bytes };
    this.pending.push(from);
    if (!this.options.commit.submit(this, update, from)) {
      this.pending.pop();
      return 'full';
    }
    for (const [client, end] of reach.value) this.known.set(client, end);
    return 'taken';
  }

  committed(list: readonly { readonly tag: Submitted; readonly update: NewUpdate; readonly seq: number }[]): void {
    if (this.lost) return;
    const { probe } = this.options;
    probe('appended');
    const taken = list.filter(({ update, seq }) => this.apply(update, seq));
    probe('applied');
    this.pending = this.pending.slice(list.length);
    const acks = new Map<Connection, { readonly counter: number; readonly seq: number }>();
    for (const { tag, seq } of list)
      if (tag.kind === 'peer') acks.set(tag.connection, { counter: tag.counter, seq });
      else tag.settle(seq);
    for (const [connection, ack] of acks) connection.send(encodeServerMessage({ kind: 'ack', ...ack }));
    probe('acknowledged');
    this.sendOn(taken, acks);
    this.options.onCommitted(this);
    if (this.quiet) this.options.onQuiet(this);
  }

  private apply(update: NewUpdate, seq: number): boolean {
    if (seq !== this.seq + 1) throw new Error(`rig ${this.rig}: log row ${seq} follows ${this.seq}`);
    this.seq = seq;
    this.tail = { rows: this.tail.rows + 1, bytes: this.tail.bytes + update.bytes.length };
    return tryApply(this.doc, update.bytes);
  }

  /** Everybody gets the updates of the others in one message, which is built once for all who sent none of them. */
  private sendOn(
    list: readonly { readonly tag: Submitted; readonly update: NewUpdate }[],
    senders: ReadonlyMap<Connection, unknown>,
  ): void {
    const frameFor = (reader: Connection | undefined): Uint8Array | undefined => {
      const others = list.filter(({ tag }) => tag.kind === 'caller' || tag.connection !== reader);
      if (others.length === 0) return undefined;
      return encodeServerMessage({ kind: 'updates', seq: this.seq, list: others.map(({ update }) => update.bytes) });
    };
    const forAll = frameFor(undefined);
    for (const connection of this.connections.keys()) {
      const frame = senders.has(connection) ? frameFor(connection) : forAll;
      if (frame) connection.send(frame);
    }
  }

  failed(reason: 'fenced' | 'store', error: Error): void {
    if (this.lost) return;
    this.options.onLost(this, reason, error);
  }

  /** Closes every connection and forgets the room; who waits for a commit is told that it is not known to be saved. */
  drop(code: CloseCode, error: Error): void {
    if (this.lost) return;
    this.lost = true;
    this.people.stop();
    for (const submitted of this.pending) if (submitted.kind === 'caller') submitted.settle(error);
    this.pending = [];
    for (const connection of [...this.connections.keys()]) connection.close(code);
  }

  private tell(frame: Uint8Array): void {
    for (const connection of [...this.connections.keys()]) connection.send(frame);
  }
}

function missingFor(doc: Y.Doc, have: Uint8Array): Uint8Array | undefined {
  try {
    return Y.encodeStateAsUpdate(doc, have);
  } catch {
    // The state vector came from outside: one that cannot be read is answered like any other malformed message.
    return undefined;
  }
}
