import { rowsOf } from '#base/table.ts';
import type { PersonField } from '#engine/model/field.ts';
import type { Fixture } from '#engine/model/fixture.ts';
import { foldName } from '#engine/model/ids.ts';
import { compareNatural } from '#engine/model/natural-order.ts';
import type { Rig } from '#engine/model/rig.ts';

/** The most suggestions shown at once. */
const MOST = 8;

/** What a cell may well hold: names that are in use already, each once, in natural order; empty for a field of its own. */
export function knownValues(rig: Rig, fixture: Fixture, field: PersonField): readonly string[] {
  switch (field) {
    case 'type':
      return distinct([...rowsOf(rig.modes)].map(({ type }) => type));
    case 'mode': {
      const type = foldName(fixture.type);
      return distinct([...rowsOf(rig.modes)].filter((mode) => foldName(mode.type) === type).map(({ mode }) => mode));
    }
    case 'position':
      return distinct([...rowsOf(rig.positions)].map(({ name }) => name).concat(valuesIn(rig, 'position')));
    case 'purpose':
    case 'colour':
    case 'circuit':
      return distinct(valuesIn(rig, field));
    default:
      return [];
  }
}

function valuesIn(rig: Rig, field: 'position' | 'purpose' | 'colour' | 'circuit'): string[] {
  const values = new Set<string>();
  for (const fixture of rowsOf(rig.fixtures)) values.add(fixture[field]);
  return [...values];
}

/** One spelling of each name: the first. */
function distinct(names: readonly string[]): readonly string[] {
  const byFold = new Map<string, string>();
  for (const name of names) {
    const fold = foldName(name);
    if (fold !== '' && !byFold.has(fold)) byFold.set(fold, name);
  }
  return [...byFold.values()].sort(compareNatural);
}

/** The known values that a typed text may mean, those that start with it first; a text that is one of them needs no help. */
export function suggest(known: readonly string[], text: string): readonly string[] {
  const sought = foldName(text);
  const folded = known.map((value) => ({ value, at: foldName(value).indexOf(sought) }));
  const starting = folded.filter(({ at }) => at === 0);
  const within = folded.filter(({ at }) => at > 0);
  const found = [...starting, ...within].map(({ value }) => value);
  return found.length === 1 && foldName(found[0] ?? '') === sought ? [] : found.slice(0, MOST);
}
