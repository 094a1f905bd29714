import type { HistoryFilter } from '#wire/history.ts';
import { storableText } from '../library/storable.ts';

/** A condition on rows of `rig_change`, and the values it takes. */
export interface FilterSql {
  readonly where: string;
  readonly values: readonly unknown[];
}

/** The rows of a rig's index that count and that a filter lets through. */
export function filterSql(rigId: string, upTo: number, filter: HistoryFilter): FilterSql {
  const values: unknown[] = [rigId, upTo];
  const parts = ['rig_id = $1', 'seq <= $2'];
  const add = (value: unknown, condition: (place: string) => string) => {
    if (value === null || value === '') return;
    values.push(value);
    parts.push(condition(`$${values.length}`));
  };
  add(filter.unit && storableText(filter.unit), (place) => `part = 'unit' and row_id = ${place}`);
  add(filter.named && patternOf(filter.named), (place) => `part = 'unit' and name ilike ${place}`);
  // Of one unit what it came with belongs to the history of each cell; of all of them it would drown it.
  const came = filter.unit === null ? '' : ' or field is null';
  add(filter.field, (place) => `part = 'unit' and (field = ${place}${came})`);
  add(filter.person, (place) => `author = ${place}`);
  add(filter.from && new Date(filter.from), (place) => `at >= ${place}`);
  add(filter.to && new Date(filter.to), (place) => `at < ${place}`);
  return { where: parts.map((part) => `(${part})`).join(' and '), values };
}

const patternOf = (text: string) => `%${storableText(text).replace(/[\\%_]/g, '\\$&')}%`;
