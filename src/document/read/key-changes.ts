import * as Y from 'yjs';

/** What stood under a key of a map before and after a transaction; undefined for nothing. */
export interface KeyChange {
  readonly key: string;
  readonly before: Y.Item | undefined;
  readonly after: Y.Item | undefined;
}

/**
 * The keys whose entry a transaction changed. A write that arrived and lost at once to one that stood there changes nothing
 * and is not among them. To be asked in `afterTransaction`, while what was overwritten can still be read.
 *
 * Yjs keeps all entries ever made under one key in a list, of which the last counts (and none, when the last is deleted).
 */
export function keyChanges(transaction: Y.Transaction, map: Y.Map<unknown>): KeyChange[] {
  const changes: KeyChange[] = [];
  const changed: ReadonlyMap<unknown, ReadonlySet<string | null>> = transaction.changed;
  for (const key of changed.get(map) ?? []) {
    const last = key === null ? undefined : map._map.get(key);
    if (key === null || last === undefined) continue;
    const before = standingBefore(transaction, last);
    const after = last.deleted ? undefined : last;
    if (before !== after) changes.push({ key, before, after });
  }
  return changes;
}

function standingBefore(transaction: Y.Transaction, last: Y.Item): Y.Item | undefined {
  let item: Y.Item | null = last;
  while (item !== null && item.id.clock >= (transaction.beforeState.get(item.id.client) ?? 0)) item = item.left;
  if (item === null || (item.deleted && !Y.isDeleted(transaction.deleteSet, item.id))) return undefined;
  return item;
}

/** What an entry holds. */
export function heldBy(item: Y.Item | undefined): unknown {
  return item?.content.getContent()[item.length - 1];
}
