import * as Y from 'yjs';
import { type Rng, seededRng } from '#base/rng.ts';
import { loadRig } from '#server/stored/load-rig.ts';
import { Hub } from '#server/sync/hub.ts';
import type { MemoryLog } from '#server/sync/memory-log.ts';
import { noProbe } from '#server/sync/probe.ts';
import { createFakeClock } from '#tests/support/fake-clock.ts';
import { CLOSE } from '#wire/sync/close-code.ts';
import type { SyncRole } from '#wire/sync/message.ts';
import { EditModel, marksOf } from './edit-model.ts';
import { clockOf, type Fate, Held, type Life } from './held.ts';
import { createSimLog, type SimLog } from './sim-log.ts';
import { type Accept, SimNetwork } from './sim-network.ts';
import { SimPerson } from './sim-page.ts';

const RIG = 'rig1';

interface Process {
  readonly life: Life;
  readonly hub: Hub;
  readonly connections: Map<ReturnType<Hub['connect']>, string>;
}

/**
 * People, devices, a network, processes and a log, all driven by one seed: the real client core and the real server core, with
 * everything between them in queues.
 */
export class World {
  readonly rng: Rng;
  private readonly clock = createFakeClock();
  private readonly held = new Held();
  private readonly model = new EditModel();
  private readonly log: SimLog;
  private readonly network: SimNetwork;
  private readonly people: SimPerson[];
  private readonly roles = new Map<string, SyncRole | 'none'>();
  private processes: Process[] = [];
  private readonly promised = new Set<string>();
  /** What is committed, kept up to date row by row. */
  private readonly committed = new Y.Doc();
  private rowsRead = 0;
  private healthy = false;

  constructor(seed: number, memory?: MemoryLog) {
    this.rng = seededRng(seed);
    this.log = createSimLog(RIG, this.held, memory);
    this.network = new SimNetwork(this.accept);
    this.startProcess();
    const { rng, clock, held, network, model } = this;
    const users = Array.from({ length: 2 + rng.int(3) }, (_, nth) => `user${nth}`);
    for (const user of users) this.roles.set(user, 'writer');
    this.people = users.map((user) => new SimPerson(user, { rng, clock, held, network, model }));
  }

  private readonly accept: Accept = (user, peer) => {
    const process = this.processes.length > 0 ? this.rng.pick(this.processes) : undefined;
    if (!process) return 'nobody';
    const role = this.roles.get(user) ?? 'none';
    if (role === 'none') {
      peer.close(CLOSE.noSuchRig);
      return 'closed';
    }
    const connection = process.hub.connect(RIG, { user, name: user, role }, { ...peer, buffered: () => 0 });
    process.connections.set(connection, user);
    return { connection, process: process.life };
  };

  private startProcess(): void {
    const life = { alive: true };
    const hub = new Hub({
      log: this.log.of(life),
      clock: clockOf(this.clock, life),
      turn: () => Promise.resolve(),
      probe: noProbe,
      report: () => undefined,
      checkpointRows: 1 + this.rng.int(12),
      keepRowsMs: this.rng.int(2) === 0 ? this.rng.int(5_000) : undefined,
      idleMs: 2_000,
    });
    this.processes.push({ life, hub, connections: new Map() });
  }

  private crash(process: Process): void {
    this.processes = this.processes.filter((other) => other !== process);
    this.held.end(process.life, this.rng);
    this.network.cutAllOf(process.life, this.rng);
  }

  /** Asks every process to stop in good order, and starts another. */
  private restart(process: Process): void {
    void process.hub.drain();
    this.processes = this.processes.filter((other) => other !== process);
    this.startProcess();
  }

  private setRole(user: string, role: SyncRole | 'none'): void {
    this.roles.set(user, role);
    for (const { connections } of this.processes)
      for (const [connection, who] of connections) {
        if (who !== user || connection.closed) continue;
        if (role === 'none') connection.close(CLOSE.noSuchRig);
        else connection.setRole(role);
      }
  }

  private fate(): Fate {
    if (this.healthy || this.rng.int(8) > 0) return 'well';
    return this.rng.pick<Fate>(['refused', 'answer-lost']);
  }

  /** One thing happens, chosen by chance. */
  act(): void {
    const { rng } = this;
    const person = rng.pick(this.people);
    const process = this.processes.length > 0 ? rng.pick(this.processes) : undefined;
    const chances: readonly (readonly [number, () => void])[] = [
      [22, () => person.edit()],
      [30, () => void this.network.deliver(rng)],
      [22, () => this.held.step(rng, this.fate())],
      [8, () => this.clock.advance(rng.int(300))],
      [2, () => this.clock.advance(1_000 + rng.int(20_000))],
      [2, () => this.network.cutOne(rng)],
      [2, () => person.toggleOnline()],
      [2, () => person.reload()],
      [2, () => person.client.nudge()],
      [2, () => this.setRole(person.user, rng.pick(['writer', 'writer', 'reader', 'none'] as const))],
      [2, () => process && this.crash(process)],
      [2, () => this.processes.length < 2 && this.startProcess()],
      [1, () => process && this.restart(process)],
      [1, () => this.compactFromOutside()],
    ];
    let dice = rng.int(chances.reduce((sum, [weight]) => sum + weight, 0));
    for (const [weight, happen] of chances) {
      dice -= weight;
      if (dice >= 0) continue;
      happen();
      return;
    }
  }

  /** Another process builds a checkpoint and trims, whatever this one is at. */
  private compactFromOutside(): void {
    const log = this.log.of({ alive: true });
    void log.checkpoint(RIG).catch(() => undefined);
    void log.trim(RIG, new Date(this.clock.now() - this.rng.int(3_000))).catch(() => undefined);
  }

  /** Everything is mended, and everybody may write and is there: what is left to happen happens. */
  async settle(flush: () => Promise<void>): Promise<void> {
    this.healthy = true;
    for (const process of this.processes.slice(1)) this.crash(process);
    if (this.processes.length === 0) this.startProcess();
    for (const person of this.people) {
      person.online = true;
      this.setRole(person.user, 'writer');
      person.client.nudge();
    }
    // A socket that is dead without knowing it is found out after 25 s.
    let atRest = 0;
    for (let round = 0; round < 75 && atRest < 20; round++) {
      // Whoever was told to stop while their way back was being opened comes back when they look at the page again.
      for (const { client } of this.people) if (client.state().link === 'stopped') client.nudge();
      for (let quiet = false; !quiet; ) {
        while (this.held.size > 0) this.held.step(this.rng, 'well');
        await flush();
        quiet = !this.network.deliver(this.rng) && this.held.size === 0;
        await flush();
      }
      const done = this.people.every(({ client }) => client.state().link === 'live' && client.state().save === 'saved');
      atRest = done ? atRest + 1 : 0;
      this.clock.advance(2_000);
      await flush();
    }
  }

  private readCommitted(): void {
    for (const row of this.log.committed.slice(this.rowsRead)) Y.applyUpdate(this.committed, row.bytes);
    this.rowsRead = this.log.committed.length;
  }

  /** What is wrong at any moment; empty when all is well. */
  faults(): string[] {
    this.readCommitted();
    const claims = this.people.flatMap((person) => person.falseClaims(this.committed));
    for (const person of this.people) for (const id of person.promised()) this.promised.add(id);
    const ahead = this.processes.flatMap(({ hub }) => aheadOf(hub, this.committed));
    const gap = this.committed.store.pendingStructs ? ['the log has a gap'] : [];
    return [...claims, ...ahead, ...gap, ...this.model.faults(this.committed)];
  }

  /** What is wrong once everything has settled. */
  async faultsAtRest(): Promise<string[]> {
    const faults = this.faults();
    const lost = [...this.promised].filter((id) => !marksOf(this.committed).has(id));
    if (lost.length > 0) faults.push(`promised and lost: ${lost}`);
    const truth = shown(this.committed);
    for (const { user, doc, client } of this.people) {
      const { link, save } = client.state();
      if (link !== 'live' || save !== 'saved') faults.push(`${user} is ${link}, ${save}`);
      if (shown(doc) !== truth) faults.push(`${user} shows ${shown(doc)}, not ${truth}`);
    }
    const stored = await this.log.memory.read(RIG);
    const rebuilt = stored && shown(loadRig(stored).doc);
    if (rebuilt !== truth) faults.push(`checkpoint and tail give ${rebuilt}, not ${truth}`);
    const numbers = this.log.committed.map((row) => row.seq);
    if (numbers.some((seq, nth) => seq !== nth + 1)) faults.push(`the log is numbered ${numbers}`);
    return faults;
  }
}

/** Whether a process holds in memory what the log has not. */
function aheadOf(hub: Hub, committed: Y.Doc): string[] {
  const ahead: string[] = [];
  if (hub.stats().rooms === 0) return ahead;
  void hub.read(RIG, (doc) => {
    if (doc.store.pendingStructs) ahead.push('a process holds updates it cannot apply');
    for (const [client, clock] of Y.decodeStateVector(Y.encodeStateVector(doc)))
      if (clock > Y.getState(committed.store, client)) ahead.push(`a process is ahead of the log for client ${client}`);
  });
  return ahead;
}

/** What a document shows, comparable. */
function shown(doc: Y.Doc): string {
  const sorted = (name: string) => [...doc.getMap(name).entries()].map(String).sort();
  return JSON.stringify([sorted('cells'), sorted('marks')]);
}
