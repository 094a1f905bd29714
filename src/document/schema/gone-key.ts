import { type FixtureId, isId } from '#engine/model/ids.ts';

/**
 * Where a document marks a row as removed. The key carries the client that removed it, so that two people who remove one
 * row leave two marks, and the undo of one does not take back the removal of the other.
 */
export const goneKey = (fixture: FixtureId, client: number): string => `${fixture}/${client}`;

/** The row a mark names; undefined for a key that is no mark. */
export function parseGoneKey(key: string): FixtureId | undefined {
  const slash = key.indexOf('/');
  const fixture = key.slice(0, Math.max(slash, 0));
  return isId(fixture) && /^\d{1,16}$/.test(key.slice(slash + 1)) ? (fixture as FixtureId) : undefined;
}
