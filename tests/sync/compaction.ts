import * as Y from 'yjs';
import type { Rng } from '#base/rng.ts';
import { loadRig } from '#server/stored/load-rig.ts';
import type { StoredRig } from '#server/stored/stored-rig.ts';
import { upToFirstHole } from '#server/sync/build-checkpoint.ts';
import type { NewUpdate } from '#server/sync/update-log.ts';

/** The log of one rig, as the compaction suite drives it. */
export interface CompactedLog {
  append(update: NewUpdate): Promise<number>;
  read(): Promise<StoredRig>;
  checkpoint(): Promise<unknown>;
  trim(before: Date): Promise<unknown>;
}

export interface CompactionRun {
  readonly log: CompactedLog;
  readonly rng: Rng;
  readonly steps: number;
  /** Lets something of what is under way happen. */
  readonly goOn: () => Promise<void>;
}

interface Reading {
  readonly seq: number;
  readonly shown: string;
  /** The highest number that had been acknowledged when the reading was asked for. */
  readonly atLeast: number;
}

/**
 * Writers, two compactors and readers at once: whatever moment a rig is read at, checkpoint and tail have to show what the
 * whole log up to there shows, and everything acknowledged before has to be in it. Answers what was not so.
 */
export async function runCompaction({ log, rng, steps, goOn }: CompactionRun): Promise<readonly string[]> {
  const source = new Y.Doc();
  source.clientID = 1;
  const acknowledged = new Map<number, Uint8Array>();
  const readings: Reading[] = [];
  const underWay: Promise<unknown>[] = [];

  const write = (step: number): void => {
    const before = Y.encodeStateVector(source);
    const cells = source.getMap('cells');
    if (rng.int(5) === 0) cells.delete(`c${rng.int(5)}`);
    else cells.set(`c${rng.int(5)}`, step);
    const update = { rig: 'rig', author: 'a', at: new Date(step), bytes: Y.encodeStateAsUpdate(source, before) };
    underWay.push(log.append(update).then((seq) => acknowledged.set(seq, update.bytes)));
  };
  const read = async (): Promise<void> => {
    const atLeast = prefixOf(acknowledged);
    const { doc, seq } = loadRig(upToFirstHole(await log.read()));
    readings.push({ seq, shown: shown(doc), atLeast });
  };
  for (let step = 0; step < steps; step++) {
    const dice = rng.int(12);
    if (dice < 5) write(step);
    else if (dice < 7) underWay.push(log.checkpoint());
    else if (dice < 8) underWay.push(log.trim(new Date(rng.int(step + 1))));
    else if (dice < 9) underWay.push(read());
    else await goOn();
  }
  await throughout(goOn, Promise.all(underWay));
  await throughout(goOn, read());
  return faultsOf(readings, acknowledged);
}

async function throughout(goOn: () => Promise<void>, work: Promise<unknown>): Promise<void> {
  let done = false;
  const finished = work.finally(() => {
    done = true;
  });
  finished.catch(() => undefined);
  while (!done) await goOn();
  await finished;
}

function faultsOf(readings: readonly Reading[], acknowledged: ReadonlyMap<number, Uint8Array>): string[] {
  const whole = new Y.Doc();
  const shownAt = [shown(whole)];
  for (let seq = 1; seq <= acknowledged.size; seq++) {
    Y.applyUpdate(whole, acknowledged.get(seq) ?? new Uint8Array([0, 0]));
    shownAt.push(shown(whole));
  }
  return readings.flatMap(({ seq, shown: found, atLeast }) => {
    if (seq < atLeast) return [`read up to ${seq}, though ${atLeast} was acknowledged`];
    return found === shownAt[seq] ? [] : [`at ${seq} checkpoint and tail show ${found}, the whole log ${shownAt[seq]}`];
  });
}

/** The highest number up to which all are there. */
function prefixOf(rows: ReadonlyMap<number, unknown>): number {
  let seq = 0;
  while (rows.has(seq + 1)) seq += 1;
  return seq;
}

/** What a document shows, updates that wait for earlier ones included. */
function shown(doc: Y.Doc): string {
  const waiting = doc.store.pendingStructs || doc.store.pendingDs ? 'and something waits' : '';
  return JSON.stringify([...doc.getMap('cells').entries()].map(String).sort()) + waiting;
}
