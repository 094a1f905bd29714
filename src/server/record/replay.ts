import { deflateSync } from 'node:zlib';
import * as Y from 'yjs';
import { freezeRig } from '#document/frozen/frozen-rig.ts';
import { readRig, watchRig } from '#document/read/rig-reader.ts';
import type { Change } from '#engine/history/change.ts';
import { changesOf } from '#engine/history/changes-of.ts';
import { nameOfRow } from '#words/history-names.ts';
import { loadRig, tryApply } from '../stored/load-rig.ts';
import type { LoggedUpdate, StoredRig } from '../stored/stored-rig.ts';

/** Goes on with the replay of a log: applies `rows` one by one to the document that stands at `state`. */
export interface ReplayJob {
  readonly kind: 'replay';
  /** Undefined at the beginning of the log. */
  readonly state: LoggedUpdate | undefined;
  /** The rows that follow, without a hole. */
  readonly rows: readonly LoggedUpdate[];
  /** Rows up to this one are applied and not told. */
  readonly after: number;
  /** It stops behind the row with which it has told as many changes as this, or more. */
  readonly most: number;
}

export interface Replayed {
  /** Where it stopped, to go on from. */
  readonly state: LoggedUpdate;
  readonly changes: readonly LoggedChange[];
}

/** A change as the index keeps it: which row of the log made it, and as which of its changes, from 0. */
export interface LoggedChange {
  readonly seq: number;
  readonly nth: number;
  /** What its row was called then. */
  readonly name: string;
  readonly change: Change;
}

/** Asks for the rig as it stood at the last of `rows`, frozen and deflated. */
export interface MomentJob {
  readonly kind: 'moment';
  readonly rows: StoredRig;
}

export function replay({ state, rows, after, most }: ReplayJob): Replayed {
  const { doc } = loadRig({ checkpoint: state, tail: rows.filter(({ seq }) => seq <= after) });
  const reader = watchRig(doc);
  const changes: LoggedChange[] = [];
  let seq = Math.max(state?.seq ?? 0, Math.min(after, rows.at(-1)?.seq ?? 0));
  for (const row of rows) {
    if (row.seq <= after) continue;
    const before = reader.rig();
    // A row that no document can take changes nothing: every reader of the log leaves it out.
    tryApply(doc, row.bytes);
    changesOf(before, reader.rig()).forEach(({ change, of }, nth) => {
      changes.push({ seq: row.seq, nth, name: nameOfRow(change.part, of), change });
    });
    seq = row.seq;
    if (changes.length >= most) break;
  }
  reader.close();
  const bytes = Y.encodeStateAsUpdate(doc);
  doc.destroy();
  return { state: { seq, bytes }, changes };
}

export function freezeMoment({ rows }: MomentJob): Uint8Array<ArrayBuffer> {
  const { doc } = loadRig(rows);
  const text = freezeRig(readRig(doc));
  doc.destroy();
  return Uint8Array.from(deflateSync(text));
}
