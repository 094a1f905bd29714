import type * as Y from 'yjs';
import type { Clock } from '#base/clock.ts';
import { ok, type Result, refuse } from '#base/result.ts';
import { CAPS } from '#wire/caps.ts';
import { CLOSE, type CloseCode } from '#wire/sync/close-code.ts';
import { loadRig } from '../stored/load-rig.ts';
import { Connection, type ConnectionHost } from './connection.ts';
import { createGroupCommit, type GroupCommit } from './group-commit.ts';
import type { Pass } from './pass.ts';
import type { Peer } from './peer.ts';
import type { Probe } from './probe.ts';
import { Room, type Submitted } from './room.ts';
import type { UpdateLog } from './update-log.ts';

export interface HubOptions {
  readonly log: UpdateLog;
  readonly clock: Clock;
  /** Resolves at the end of this turn of the event loop. */
  readonly turn: () => Promise<void>;
  readonly probe: Probe;
  /** Trouble that nobody is waiting to hear of: a store that fails, a rig taken over. */
  readonly report: (what: string, error: Error) => void;
  /** Updates after which a checkpoint is built. */
  readonly checkpointRows: number;
  /** How long log rows stay after a checkpoint holds them; `undefined` keeps them for ever, as the history of a rig needs. */
  readonly keepRowsMs: number | undefined;
  /** How long a rig stays in memory after the last person has left. */
  readonly idleMs: number;
}

export interface HubStats {
  readonly rooms: number;
  readonly connections: number;
  /** Updates waiting for the store. */
  readonly waiting: number;
  readonly statements: number;
  readonly rows: number;
  readonly storeFailures: number;
  /** Log rows that no document could take. */
  readonly unusableRows: number;
}

export type WriteTrouble = 'no-such-rig' | 'malformed' | 'gap' | 'try-again';

const TICK_MS = 5_000;

/** The sync core: rigs in memory and the connections on them. Storage, clock and transport are handed in. */
export class Hub {
  private readonly rooms = new Map<string, Promise<Room | undefined>>();
  private readonly loaded = new Map<string, Room>();
  private readonly connections = new Set<Connection>();
  private readonly commit: GroupCommit<Submitted>;
  private readonly counts = { statements: 0, rows: 0, storeFailures: 0, unusableRows: 0 };
  private compacting: Promise<void> = Promise.resolve();
  private stopTick: (() => void) | undefined;
  private draining = false;

  constructor(private readonly options: HubOptions) {
    this.commit = createGroupCommit<Submitted>({
      log: options.log,
      clock: options.clock,
      turn: options.turn,
      queueBytes: CAPS.syncAppendQueue,
      onStatement: (rows) => {
        options.probe('appending');
        this.counts.statements += 1;
        this.counts.rows += rows;
      },
    });
  }

  /** Takes a connection on; it is in the room of its rig once it has said hello. */
  connect(rig: string, pass: Pass, peer: Peer): Connection {
    const host: ConnectionHost = {
      hello: (connection, have) => void this.admit(rig, connection, have),
      update: (connection, counter, bytes) => this.update(rig, connection, counter, bytes),
      presence: (connection, where) => this.loaded.get(rig)?.move(connection, where),
      gone: (connection) => {
        this.connections.delete(connection);
        this.loaded.get(rig)?.leave(connection);
      },
    };
    const connection = new Connection(pass, peer, host, this.options.clock);
    const windows = [...this.connections].filter((other) => other.pass.user === pass.user).length;
    this.connections.add(connection);
    if (this.draining) connection.close(CLOSE.restarting);
    else if (windows >= CAPS.syncSocketsPerPerson) connection.close(CLOSE.tooFast);
    this.keepTicking();
    return connection;
  }

  private async admit(rig: string, connection: Connection, have: Uint8Array): Promise<void> {
    const room = await this.roomOf(rig).catch((error: Error) => error);
    if (connection.closed) return;
    if (room === undefined) connection.close(CLOSE.noSuchRig);
    else if (room instanceof Error || !room.usable || this.draining) connection.close(CLOSE.tryAgain);
    else room.enter(connection, have);
  }

  private update(rig: string, connection: Connection, counter: number, bytes: Uint8Array): CloseCode | undefined {
    const room = this.loaded.get(rig);
    // An update before the welcome: the client cannot know yet what to send.
    if (!room?.holds(connection)) return CLOSE.malformed;
    if (this.draining) return undefined;
    const answer = room.submit(bytes, connection.pass.user, { kind: 'peer', connection, counter });
    if (answer === 'taken') return undefined;
    return answer === 'malformed' ? CLOSE.malformed : CLOSE.tryAgain;
  }

  /** Appends an update of this process, by the same path as everybody's. Answers its sequence number once it is committed. */
  async applyUpdate(rig: string, author: string, bytes: Uint8Array): Promise<Result<number, WriteTrouble>> {
    if (this.draining) return refuse('try-again');
    const room = await this.roomOf(rig).catch((error: Error) => error);
    if (room === undefined) return refuse('no-such-rig');
    if (room instanceof Error || !room.usable) return refuse('try-again');
    return new Promise((resolve) => {
      const settle = (outcome: number | Error) => resolve(outcome instanceof Error ? refuse('try-again') : ok(outcome));
      const answer = room.submit(Uint8Array.from(bytes), author, { kind: 'caller', settle });
      if (answer !== 'taken') resolve(refuse(answer === 'full' ? 'try-again' : answer));
    });
  }

  /**
   * Reads a rig as the log has it now. `use` gets the document itself: it must not write to it nor keep it. Undefined when there is no
   * such rig.
   */
  async read<T>(rig: string, use: (doc: Y.Doc, seq: number) => T): Promise<T | undefined> {
    const room = this.loaded.get(rig);
    if (room) return use(room.doc, room.seq);
    const stored = await this.options.log.read(rig);
    if (!stored) return undefined;
    const { doc, seq } = loadRig(stored);
    try {
      return use(doc, seq);
    } finally {
      doc.destroy();
    }
  }

  private roomOf(rig: string): Promise<Room | undefined> {
    const there = this.rooms.get(rig);
    if (there) return there;
    const opening = this.open(rig);
    this.rooms.set(rig, opening);
    const forget = () => {
      if (this.rooms.get(rig) === opening) this.rooms.delete(rig);
    };
    opening.then(
      (room) => (room ? this.whenQuiet(room) : forget()),
      (error: Error) => {
        forget();
        this.counts.storeFailures += 1;
        this.options.report(`opening rig ${rig}`, error);
      },
    );
    return opening;
  }

  private async open(rig: string): Promise<Room | undefined> {
    const opened = await this.options.log.open(rig);
    if (!opened) return undefined;
    const loaded = loadRig(opened.stored);
    this.counts.unusableRows += loaded.unusable.length;
    const room = new Room({
      rig,
      fence: opened.fence,
      loaded,
      clock: this.options.clock,
      commit: this.commit,
      probe: this.options.probe,
      onLost: (lost, reason, error) => this.lose(lost, reason, error),
      onCommitted: (busy) => this.checkpointWhenDue(busy, this.options.checkpointRows),
      onQuiet: (quiet) => this.whenQuiet(quiet),
    });
    this.loaded.set(rig, room);
    return room;
  }

  private lose(room: Room, reason: 'fenced' | 'store', error: Error): void {
    if (reason === 'store') this.counts.storeFailures += 1;
    this.options.report(`rig ${room.rig}: ${reason}`, error);
    this.unload(room);
    room.drop(reason === 'fenced' ? CLOSE.fenced : CLOSE.tryAgain, error);
  }

  private unload(room: Room): void {
    if (this.loaded.get(room.rig) !== room) return;
    this.loaded.delete(room.rig);
    this.rooms.delete(room.rig);
  }

  /** Nobody is here: after a while, unless somebody has come, a checkpoint if it is worth one, and the memory is given back. */
  private whenQuiet(room: Room): void {
    this.options.clock.after(this.options.idleMs, () => {
      if (!room.quiet || this.loaded.get(room.rig) !== room) return;
      this.checkpointWhenDue(room, Math.ceil(this.options.checkpointRows / 10));
      this.unload(room);
      room.drop(CLOSE.tryAgain, new Error(`rig ${room.rig} was unloaded`));
    });
  }

  private checkpointWhenDue(room: Room, rows: number): void {
    if (this.draining || !room.wantsCheckpoint(rows)) return;
    room.startCheckpoint();
    this.compacting = this.compacting.then(() => this.compact(room.rig));
  }

  private async compact(rig: string): Promise<void> {
    const { log, probe, keepRowsMs, clock } = this.options;
    try {
      probe('checkpointing');
      await log.checkpoint(rig);
      probe('checkpointed');
      if (keepRowsMs === undefined) return;
      probe('trimming');
      await log.trim(rig, new Date(clock.now() - keepRowsMs));
      probe('trimmed');
    } catch (error) {
      // The log is whole without a checkpoint; the next one is due after as many rows again.
      this.options.report(`checkpoint of rig ${rig}`, error instanceof Error ? error : new Error(String(error)));
    }
  }

  private keepTicking(): void {
    this.stopTick ??= this.options.clock.after(TICK_MS, () => {
      this.stopTick = undefined;
      for (const connection of [...this.connections]) connection.tick();
      void this.lookForLostFences();
      if (this.connections.size > 0) this.keepTicking();
    });
  }

  /** A process that only listens would never learn from an append that another one has taken its rig over. */
  private async lookForLostFences(): Promise<void> {
    const held = [...this.loaded.values()];
    if (held.length === 0) return;
    try {
      const lost = new Set(await this.options.log.lost(held.map(({ rig, fence }) => ({ rig, fence }))));
      for (const room of held)
        if (lost.has(room.rig)) room.failed('fenced', new Error(`rig ${room.rig} was taken over`));
    } catch (error) {
      this.options.report('looking for lost rigs', error instanceof Error ? error : new Error(String(error)));
    }
  }

  /** Takes no more updates, lets what is on its way be committed and acknowledged, then closes every connection. */
  async drain(): Promise<void> {
    this.draining = true;
    await this.commit.idle();
    for (const connection of [...this.connections]) connection.close(CLOSE.restarting);
    await this.compacting;
    this.stopTick?.();
    for (const room of [...this.loaded.values()]) {
      this.unload(room);
      room.drop(CLOSE.restarting, new Error('the process stops'));
    }
  }

  stats(): HubStats {
    return {
      rooms: this.loaded.size,
      connections: this.connections.size,
      waiting: this.commit.waiting,
      ...this.counts,
    };
  }
}
