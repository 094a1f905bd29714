import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { seededRng } from '#base/rng.ts';
import { type PortProcess, startPortProcess } from '#tests/support/port-process.ts';
import type { StoreKind } from '#tests/support/store.ts';
import { makeStorePlace } from '#tests/support/store-place.ts';
import { openEditors } from './editors.ts';

const SERVER = join(import.meta.dirname, 'server-process.ts');
const POINTS = [
  'appending',
  'appended',
  'applied',
  'acknowledged',
  'checkpointing',
  'checkpointed',
  'trimming',
  'trimmed',
  'committing',
  'committed',
] as const;
/** Reached with every batch; the others with every checkpoint. */
const OFTEN: ReadonlySet<string> = new Set(['appending', 'appended', 'applied', 'acknowledged']);
const EDITORS = 5;
/** A point that is not reached by then: killed all the same, from outside, wherever it is. */
const PATIENCE_MS = 2_500;

export interface KillOutcome {
  readonly faults: readonly string[];
  readonly acknowledged: number;
  readonly points: ReadonlyMap<string, number>;
}

export interface KillRun {
  readonly rounds: number;
  readonly seed: number;
  /** `hasty` acknowledges before it stores: it has to be found out. */
  readonly server: 'honest' | 'hasty';
}

/** Kills a server process again and again on one store and counts the acknowledged edits that are not there afterwards. */
export async function killOn(kind: StoreKind, { rounds, seed, server: manner }: KillRun): Promise<KillOutcome> {
  const { store, root, rig, remove } = await makeStorePlace(kind);
  const rng = seededRng(seed);
  const acknowledged = new Set<string>();
  const points = new Map<string, number>();
  const faults: string[] = [];
  const lookFor = (there: ReadonlySet<string>, round: number): void => {
    const lost = [...acknowledged].filter((id) => !there.has(id));
    const where = `${kind}, seed ${seed}, before round ${round}`;
    if (lost.length > 0) faults.push(`${where}: ${lost.length} acknowledged edits lost, first ${lost[0]}`);
    for (const id of lost) acknowledged.delete(id);
  };
  try {
    for (let round = 0; round < rounds; round++) {
      const point = rng.int(4) === 0 ? 'at any moment' : rng.pick(POINTS);
      points.set(point, (points.get(point) ?? 0) + 1);
      const orders = { point, nth: 1 + rng.int(OFTEN.has(point) ? 80 : 5), manner };
      const server = await startPortProcess(SERVER, { ...orders, store, root });
      const editors = openEditors(server.port, rig, { count: EDITORS, name: `r${round}`, rng });
      // The point may lie in the opening of the rig: then the server is gone before anybody has seen anything.
      const there = await Promise.race([editors.filled, server.ended.then(() => undefined)]);
      if (there) {
        lookFor(there, round);
        await editUntilKilled(server, editors, point === 'at any moment' ? 50 + rng.int(800) : PATIENCE_MS);
      }
      for (const id of editors.acknowledged()) acknowledged.add(id);
      await editors.close();
    }
    const server = await startPortProcess(SERVER, { store, root, point: 'none', nth: 0, manner });
    const reader = openEditors(server.port, rig, { count: 1, name: 'reader', rng });
    lookFor(await reader.filled, rounds);
    await reader.close();
    await server.kill();
  } finally {
    await remove();
  }
  return { faults, acknowledged: acknowledged.size, points };
}

async function editUntilKilled(
  server: PortProcess,
  editors: ReturnType<typeof openEditors>,
  patienceMs: number,
): Promise<void> {
  editors.start();
  await Promise.race([server.ended, pause(patienceMs)]);
  await server.kill();
  // What the process had sent before it died is still to be heard.
  await pause(50);
}
