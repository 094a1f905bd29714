import { describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import { present } from '#base/assert.ts';
import { seededRng } from '#base/rng.ts';
import { loadRig } from '#server/stored/load-rig.ts';
import { type Fence, FencedOff, type NewUpdate, type UpdateLog } from '#server/sync/update-log.ts';

export interface LogUnderTest {
  readonly log: UpdateLog;
  /** Makes a rig that nothing was written to and answers its id. */
  newRig(): Promise<string>;
}

/** What every update log has to do. Run on each implementation. */
export function describeUpdateLog(name: string, open: () => LogUnderTest): void {
  describe(`update log: ${name}`, () => {
    it('knows only rigs that exist', async () => {
      const { log } = open();
      expect(await log.open('nobody-made-it')).toBeUndefined();
      expect(await log.read('nobody-made-it')).toBeUndefined();
    });

    it('numbers the updates of each rig 1, 2, 3, … whatever comes in one batch, and gives them back as they were', async () => {
      const { log, newRig } = open();
      const rng = seededRng(1);
      const rigs = [
        await opened(log, await newRig()),
        await opened(log, await newRig()),
        await opened(log, await newRig()),
      ];
      const sent = new Map(rigs.map(({ rig }) => [rig, [] as Uint8Array[]]));
      for (let round = 0; round < 30; round++) {
        const batch = Array.from({ length: 1 + rng.int(40) }, () => {
          const { rig, fence } = rng.pick(rigs);
          const bytes = Uint8Array.from({ length: rng.int(200) }, () => rng.int(256));
          return { update: { ...newUpdate(rig), bytes }, fence };
        });
        const answers = await log.append(batch);
        batch.forEach(({ update }, nth) => {
          const rows = present(sent.get(update.rig), update.rig);
          rows.push(update.bytes);
          expect(answers[nth]).toBe(rows.length);
        });
      }
      for (const [rig, rows] of sent) {
        const stored = await log.read(rig);
        expect(stored).toEqual({ checkpoint: undefined, tail: rows.map((bytes, nth) => ({ seq: nth + 1, bytes })) });
      }
    });

    it('keeps numbers without a gap when batches are sent at once', async () => {
      const { log, newRig } = open();
      const { rig, fence } = await opened(log, await newRig());
      const batches = Array.from({ length: 20 }, () => [1, 2, 3].map(() => ({ update: newUpdate(rig), fence })));
      const answers = (await Promise.all(batches.map((batch) => log.append(batch)))).flat();
      expect(answers.map(Number).sort((a, b) => a - b)).toEqual(Array.from({ length: 60 }, (_, nth) => nth + 1));
    });

    it('refuses an older fence, whole, without holding up other rigs of the batch', async () => {
      const { log, newRig } = open();
      const taken = await opened(log, await newRig());
      const other = await opened(log, await newRig());
      const taker = await opened(log, taken.rig);
      expect(taker.fence).toBeGreaterThan(taken.fence);
      const answers = await log.append([
        { update: newUpdate(taken.rig), fence: taken.fence },
        { update: newUpdate(other.rig), fence: other.fence },
        { update: newUpdate(taken.rig), fence: taken.fence },
        { update: newUpdate(taken.rig), fence: taker.fence },
      ]);
      expect(answers.map((answer) => (answer instanceof FencedOff ? answer.rig : answer))).toEqual([
        taken.rig,
        1,
        taken.rig,
        1,
      ]);
      expect((await log.read(taken.rig))?.tail).toHaveLength(1);
      expect(await log.lost([taken, other, taker])).toEqual([taken.rig]);
      expect(await log.lost([])).toEqual([]);
    });

    it('answers FencedOff for a rig that is not there', async () => {
      const { log } = open();
      const [answer] = await log.append([{ update: newUpdate('nobody-made-it'), fence: 1 }]);
      expect(answer).toBeInstanceOf(FencedOff);
    });

    it('gives a taker everything that was acknowledged before, with appends under way', async () => {
      const { log, newRig } = open();
      const first = await opened(log, await newRig());
      const flying = Array.from({ length: 10 }, () =>
        log.append([{ update: newUpdate(first.rig), fence: first.fence }]),
      );
      const second = present(await log.open(first.rig), 'the rig is there');
      const answers = (await Promise.all(flying)).flat();
      const acknowledged = answers.filter((answer) => typeof answer === 'number');
      const refused = answers.filter((answer) => answer instanceof FencedOff);
      expect(second.stored.tail.map(({ seq }) => seq)).toEqual(acknowledged.sort((a, b) => a - b));
      expect(acknowledged.length + refused.length).toBe(flying.length);
    });

    it('checkpoint and tail read as the whole log did, through any number of checkpoints and trims', async () => {
      const { log, newRig } = open();
      const { rig, fence } = await opened(log, await newRig());
      const rng = seededRng(2);
      const model = new Y.Doc();
      const updates: Uint8Array[] = [];
      model.on('update', (bytes) => updates.push(bytes));
      expect(await log.checkpoint(rig)).toBeUndefined();
      let sent = 0;
      for (let round = 0; round < 25; round++) {
        for (let n = rng.int(5); n > 0; n--) model.getMap('cells').set(`c${rng.int(9)}`, rng.int(1000));
        const fresh = updates.slice(sent);
        await log.append(fresh.map((bytes, nth) => ({ update: { ...newUpdate(rig, sent + nth), bytes }, fence })));
        sent = updates.length;
        if (rng.int(3) === 0) expect(await log.checkpoint(rig)).toBe(sent === 0 ? undefined : sent);
        if (rng.int(3) === 0) await log.trim(rig, new Date(rng.int(sent + 1)));
        const loaded = loadRig(present(await log.read(rig), rig));
        expect(loaded.seq).toBe(sent);
        expect(loaded.doc.getMap('cells').toJSON()).toEqual(model.getMap('cells').toJSON());
      }
    });

    it('trims only rows that the checkpoint holds and that are older', async () => {
      const { log, newRig } = open();
      const { rig, fence } = await opened(log, await newRig());
      const add = (ats: number[]) => log.append(ats.map((at) => ({ update: newUpdate(rig, at), fence })));
      await add([1_000, 2_000, 3_000]);
      expect(await log.trim(rig, new Date(9_000))).toBe(0);
      expect(await log.checkpoint(rig)).toBe(3);
      await add([4_000]);
      expect(await log.trim(rig, new Date(2_500))).toBe(2);
      expect(await log.trim(rig, new Date(9_000))).toBe(1);
      const stored = await log.read(rig);
      expect(stored?.checkpoint?.seq).toBe(3);
      expect(stored?.tail.map(({ seq }) => seq)).toEqual([4]);
    });

    it('builds one checkpoint when two are asked for at once', async () => {
      const { log, newRig } = open();
      const { rig, fence } = await opened(log, await newRig());
      await log.append([1, 2, 3, 4].map((at) => ({ update: newUpdate(rig, at), fence })));
      expect(await Promise.all([log.checkpoint(rig), log.checkpoint(rig)])).toEqual([4, 4]);
      expect(await log.checkpoint(rig)).toBe(4);
    });

    it('takes an update of several megabytes', async () => {
      const { log, newRig } = open();
      const { rig, fence } = await opened(log, await newRig());
      const bytes = new Uint8Array(7 * 1024 * 1024).map((_, nth) => nth * 7);
      expect(await log.append([{ update: { ...newUpdate(rig), bytes }, fence }])).toEqual([1]);
      const row = (await log.read(rig))?.tail[0];
      expect(Buffer.from(present(row, 'the row').bytes).equals(bytes)).toBe(true);
    });
  });
}

async function opened(log: UpdateLog, rig: string): Promise<{ readonly rig: string; readonly fence: Fence }> {
  return { rig, fence: present(await log.open(rig), `rig ${rig} is there`).fence };
}

let clients = 0;

/** An update that changes something, of a client of its own. */
function newUpdate(rig: string, at = 0): NewUpdate {
  const doc = new Y.Doc();
  doc.clientID = ++clients;
  doc.getMap('cells').set(`client ${clients}`, clients);
  return { rig, author: 'somebody', at: new Date(at), bytes: Y.encodeStateAsUpdate(doc) };
}
