// Runs inside the browser: the copy on this device, reachable from a test.

import { forgetPerson, indexedDbCopy, unsavedOnDevice } from '#ui/live/sync/indexed-db-copy.ts';
import type { CopyBatch } from '#ui/live/sync/local-copy.ts';

/** Bytes travel between a test and its page as lists of numbers. */
export interface PlainBatch {
  readonly known?: readonly (readonly number[])[];
  readonly mine?: readonly (readonly number[])[];
  readonly acknowledged?: readonly number[];
  readonly seq?: number;
  readonly client?: number;
}

const bytesOf = (lists: PlainBatch['known'] = []): Uint8Array[] => lists.map((list) => Uint8Array.from(list));

const batchOf = (batch: PlainBatch): CopyBatch => ({
  known: bytesOf(batch.known),
  mine: bytesOf(batch.mine),
  acknowledged: batch.acknowledged ?? [],
  seq: batch.seq ?? 0,
  client: batch.client ?? 1,
});

async function load(user: string, rig: string) {
  const copy = indexedDbCopy(user, rig);
  const answer = await copy.load();
  copy.close();
  if (!answer.ok) return answer.error;
  const { known, mine, seq, clients } = answer.value;
  return {
    known: known.map((bytes) => [...bytes]),
    mine: mine.map(({ key, bytes }) => ({ key, bytes: [...bytes] })),
    seq,
    clients,
  };
}

/** Writes each batch as a page of its own would; answers what each was answered. */
async function write(user: string, rig: string, batches: readonly PlainBatch[]) {
  const answers = [];
  const copy = indexedDbCopy(user, rig);
  for (const batch of batches) {
    const answer = await copy.write(batchOf(batch));
    answers.push(answer.ok ? answer.value : answer.error);
  }
  copy.close();
  return answers;
}

async function writeMany(user: string, rig: string, bytes: number) {
  const copy = indexedDbCopy(user, rig);
  const answer = await copy.write({ ...batchOf({}), mine: [new Uint8Array(bytes)] });
  copy.close();
  return answer.ok ? answer.value : answer.error;
}

async function unsaved(user: string) {
  const answer = await unsavedOnDevice(user);
  return answer.ok ? [...answer.value] : answer.error;
}

const copies = { load, write, writeMany, unsaved, forget: forgetPerson };
export type Copies = typeof copies;
declare global {
  interface Window {
    copies: Copies;
  }
}
window.copies = copies;
