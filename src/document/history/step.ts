import * as Y from 'yjs';
import type { PlanName } from '#engine/model/edit.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import { seenCells } from '../edit/seen-cells.ts';
import { heldBy, keyChanges } from '../read/key-changes.ts';
import { packBlock, unpackBlock } from '../schema/block.ts';
import { parseGoneKey } from '../schema/gone-key.ts';
import { MAP_NAMES, type RigMaps } from '../schema/rig-doc.ts';

/** What a plan did under one key of one part of the document; undefined stands for no entry. */
export interface Entry {
  readonly part: keyof RigMaps;
  readonly key: string;
  readonly before: unknown;
  readonly after: unknown;
}

/** What one plan did, and when: `at` counts the transactions of others before it. */
export interface Step {
  readonly name: PlanName;
  readonly at: number;
  readonly entries: readonly Entry[];
}

export function captureStep(maps: RigMaps, transaction: Y.Transaction, name: PlanName, at: number): Step {
  const entries = MAP_NAMES.flatMap((part) =>
    keyChanges(transaction, maps[part]).map(({ key, before, after }): Entry => {
      return { part, key, before: plainHeldBy(before), after: plainHeldBy(after) };
    }),
  );
  return { name, at, entries };
}

/** A shared type that somebody hid under a key cannot be put back, and nobody reads it: it counts as no entry. */
function plainHeldBy(item: Y.Item | undefined): unknown {
  const held = heldBy(item);
  return held instanceof Y.AbstractType || held instanceof Y.Doc ? undefined : held;
}

/** Names a key of a part, or a row, in one word. */
export const placeOfEntry = ({ part, key }: Pick<Entry, 'part' | 'key'>): string => `${part} ${key}`;
export const placeOfRow = (id: FixtureId): string => `row ${id}`;

/** The rows whose being there an entry decides. */
export function rowsOfEntry(entry: Entry): readonly FixtureId[] {
  if (entry.part === 'blocks') return unpackBlock(entry.after ?? entry.before).map((row) => row.id);
  const id = entry.part === 'gone' ? parseGoneKey(entry.key) : undefined;
  return id === undefined ? [] : [id];
}

/**
 * The writes that take a step back, to be made in one transaction. `isTouched` says whether somebody else has written at a
 * place since the step.
 */
export function takeBack(
  maps: RigMaps,
  step: Step,
  isTouched: (place: string, since: number) => boolean,
): readonly (() => void)[] {
  const writes: (() => void)[] = [];
  for (const entry of step.entries) {
    if (isTouched(placeOfEntry(entry), step.at)) continue;
    const isRowTouched = (id: FixtureId) => isTouched(placeOfRow(id), step.at);
    const value = valueToPutBack(maps, entry, isRowTouched);
    if (value === entry.after) continue;
    const map = maps[entry.part];
    writes.push(value === undefined ? () => map.delete(entry.key) : () => map.set(entry.key, value));
  }
  return writes;
}

function valueToPutBack(maps: RigMaps, entry: Entry, isRowTouched: (id: FixtureId) => boolean): unknown {
  const { part, before, after } = entry;
  if (part === 'blocks' && before === undefined) {
    const rows = unpackBlock(after);
    const kept = rows.filter((row) => isRowTouched(row.id));
    if (kept.length === rows.length) return after;
    return kept.length === 0 ? undefined : packBlock(kept);
  }
  const removed = part === 'gone' && before !== undefined ? parseGoneKey(entry.key) : undefined;
  if (removed === undefined) return before;
  return isRowTouched(removed) ? after : seenCells(maps, removed);
}
