import { rowsOf } from '#base/table.ts';
import type { PersonField } from '#engine/model/field.ts';
import { foldName } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';
import type { HistoryFilter } from '#wire/history.ts';
import { unitName } from '#words/findings.ts';

/** What somebody asks of a history, as it stands in the fields; empty: whatever it is. */
export interface Asked {
  /** A unit's name, or part of one. */
  readonly unit: string;
  readonly field: PersonField | '';
  readonly person: string;
  /** Days, as `2026-11-25`; both are counted in. */
  readonly from: string;
  readonly to: string;
}

/**
 * What the server is asked. The name of exactly one unit of the rig means that unit, whatever it was called when; any other text means
 * whatever was called like it then.
 */
export function filterOf(rig: Rig, { unit, field, person, from, to }: Asked): HistoryFilter {
  const name = foldName(unit);
  const units = name === '' ? [] : [...rowsOf(rig.fixtures)].filter((row) => foldName(unitName(row)) === name);
  const [only] = units.length === 1 ? units : [];
  return {
    unit: only?.id ?? null,
    named: only === undefined && name !== '' ? unit.trim().slice(0, 200) : null,
    field: field === '' ? null : field,
    person: person === '' ? null : person,
    from: startOf(from, 0),
    to: startOf(to, 1),
  };
}

/** When a day begins on this device, some days later; null for no day. */
function startOf(day: string, later: number): string | null {
  const [year, month, date] = day.split('-').map(Number);
  if (!year || !month || !date) return null;
  const at = new Date(year, month - 1, date + later);
  return Number.isNaN(at.getTime()) ? null : at.toISOString();
}
