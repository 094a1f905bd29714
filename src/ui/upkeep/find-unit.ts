import { rowsOf } from '#base/table.ts';
import type { Fixture } from '#engine/model/fixture.ts';
import { foldName } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';
import { unitName } from '#words/findings.ts';

/** What a typed name of a unit may mean: one unit, several, or none. */
export type FoundUnit =
  | { readonly is: 'one'; readonly fixture: Fixture }
  | { readonly is: 'many'; readonly fixtures: readonly Fixture[] }
  | { readonly is: 'none' };

/** The units that a person may mean by `Bar 1 · 5`, `bar 1 5` or `105`: by position and number, else by channel. */
export function findUnit(rig: Rig, text: string): FoundUnit {
  const wanted = plain(text);
  if (wanted === '') return { is: 'none' };
  const all = [...rowsOf(rig.fixtures)];
  const named = all.filter((fixture) => plain(unitName(fixture)) === wanted);
  const channel = /^\d+$/.test(wanted) ? Number(wanted) : null;
  const found = named.length > 0 ? named : all.filter((fixture) => channel !== null && fixture.channel === channel);
  const [fixture] = found;
  if (fixture === undefined) return { is: 'none' };
  return found.length === 1 ? { is: 'one', fixture } : { is: 'many', fixtures: found };
}

/** The dot between position and number is not on every keyboard. */
const plain = (text: string) => foldName(text.replaceAll('·', ' '));
