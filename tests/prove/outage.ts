import { setTimeout as pause } from 'node:timers/promises';
import { type Rng, seededRng } from '#base/rng.ts';
import type { Sql } from '#server/db/sql.ts';
import { loadRig } from '#server/stored/load-rig.ts';
import { createSqlLog } from '#server/sync/sql-log.ts';
import { newRigIn } from '#tests/support/new-rig.ts';
import { testStores } from '#tests/support/store.ts';
import { startSyncServer, userOf } from '#tests/support/sync-server.ts';
import type { ProofOutcome, ProofRun } from './frame/proof.ts';
import { createFaultyLog, type StoreMood } from './outage/faulty-log.ts';
import { Typist } from './outage/typist.ts';

export const name = 'outage';
export const bar = "no false 'saved'; everything typed survives, the last person leaving included";
export const rounds = { usual: 10, smoke: 1 };

const MOODS: readonly StoreMood[] = ['slow', 'refused', 'full', 'answer lost'];
const PEOPLE = 3;

/** Each round takes the store of a rig with people typing on it through its moods, on each store, with real sockets. */
export async function run({ rounds: tries, seed, stores }: ProofRun): Promise<ProofOutcome> {
  const faults: string[] = [];
  let typed = 0;
  for (const kind of stores) {
    const opened = await testStores(kind);
    try {
      const { sql } = await opened.open();
      for (let round = 0; round < tries; round++) {
        const outcome = await oneRound(sql, seededRng(seed * 1000 + round));
        typed += outcome.typed;
        faults.push(...outcome.faults.map((fault) => `${kind}, seed ${seed}, round ${round}: ${fault}`));
      }
    } finally {
      await opened.close();
    }
  }
  return { rounds: tries, faults, also: { typed } };
}

async function oneRound(sql: Sql, rng: Rng): Promise<{ readonly faults: readonly string[]; readonly typed: number }> {
  const rig = await newRigIn(sql);
  const real = createSqlLog(sql);
  const faulty = createFaultyLog(real);
  const server = await startSyncServer({
    log: faulty.log,
    authorise: async (request) => ({ user: userOf(request), name: userOf(request), role: 'writer' }),
    idleMs: 20,
  });
  const committed = () => new Set(faulty.committed.getMap('marks').keys());
  const place = { port: server.port, rig, committed };
  const people = Array.from({ length: PEOPLE }, (_, nth) => new Typist(`p${nth}`, place));
  try {
    for (const person of people) person.open();
    await untilAtRest(people);
    for (let nth = 0; nth < 5; nth++) {
      faulty.mood = nth % 2 === 0 ? rng.pick(MOODS) : 'well';
      await typeFor(people, 100 + rng.int(200));
    }
    // They type on while the store fails, and one after the other leaves.
    faulty.mood = rng.pick(['refused', 'full', 'answer lost']);
    for (const person of people) {
      await typeFor(people, 50 + rng.int(100));
      await person.close();
    }
    await pause(100);
    faulty.mood = 'well';
    for (const person of people) person.open();
    const faults = await untilAtRest(people);
    const stored = await real.read(rig);
    const there = new Set(stored ? loadRig(stored).doc.getMap('marks').keys() : []);
    for (const person of people) {
      const lost = person.typed.filter((id) => !there.has(id));
      if (lost.length > 0) faults.push(`${person.user} typed ${lost.length} edits that are gone, first ${lost[0]}`);
      faults.push(...person.lies.slice(0, 1));
      if (!person.shown.has('on-this-device')) faults.push(`${person.user} was never told that edits were not saved`);
    }
    return { faults, typed: people.reduce((sum, person) => sum + person.typed.length, 0) };
  } finally {
    for (const person of people) await person.close();
    await server.stop();
  }
}

async function typeFor(people: readonly Typist[], ms: number): Promise<void> {
  const until = performance.now() + ms;
  while (performance.now() < until) {
    for (const person of people) person.type();
    await pause(10);
  }
}

async function untilAtRest(people: readonly Typist[]): Promise<string[]> {
  const until = performance.now() + 60_000;
  while (!people.every((person) => person.atRest)) {
    if (performance.now() > until) return ['not everybody came back within a minute'];
    for (const person of people) person.nudge();
    await pause(50);
  }
  return [];
}
