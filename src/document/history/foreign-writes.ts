import type * as Y from 'yjs';
import type { FixtureId } from '#engine/model/ids.ts';
import { heldBy, keyChanges } from '../read/key-changes.ts';
import { parseCellKey } from '../schema/cell-key.ts';
import { MAP_NAMES, type RigMaps } from '../schema/rig-doc.ts';
import { placeOfEntry, placeOfRow, rowsOfEntry, type Step } from './step.ts';

/** Remembers where others wrote, and when, at the places that steps of mine touched. Time counts their transactions. */
export interface ForeignWrites {
  now(): number;
  /** Remembers from now on what others write where this step wrote, and on the rows it added or removed. */
  watch(step: Step): void;
  note(maps: RigMaps, transaction: Y.Transaction): void;
  isSince(place: string, since: number): boolean;
}

export function createForeignWrites(): ForeignWrites {
  let now = 0;
  const watched = new Set<string>();
  const latest = new Map<string, number>();
  const mark = (place: string) => {
    if (watched.has(place)) latest.set(place, now);
  };
  return {
    now: () => now,
    watch(step) {
      for (const entry of step.entries) {
        watched.add(placeOfEntry(entry));
        for (const id of rowsOfEntry(entry)) watched.add(placeOfRow(id));
      }
    },
    note(maps, transaction) {
      now += 1;
      if (watched.size === 0) return;
      for (const part of MAP_NAMES) {
        for (const { key, before, after } of keyChanges(transaction, maps[part])) {
          mark(placeOfEntry({ part, key }));
          for (const id of rowsUnder(part, key, heldBy(after) ?? heldBy(before))) mark(placeOfRow(id));
        }
      }
    },
    isSince: (place, since) => (latest.get(place) ?? 0) > since,
  };
}

/** The rows that somebody who writes under this key has worked on. */
function rowsUnder(part: keyof RigMaps, key: string, value: unknown): readonly FixtureId[] {
  const cell = part === 'cells' ? parseCellKey(key) : undefined;
  return cell === undefined ? rowsOfEntry({ part, key, before: value, after: undefined }) : [cell.fixture];
}
