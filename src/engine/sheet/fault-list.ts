import { getRow, rowsOf } from '#base/table.ts';
import { type Fault, recordOf } from '../model/record.ts';
import type { Rig } from '../model/rig.ts';
import { hireState } from '../upkeep/hires-due.ts';
import { cautionLines, findingLines, plainCautions, type Sheet, type Standing } from './sheet.ts';
import { byPlace } from './sheet-order.ts';
import { table } from './tech-pack.ts';

/** The faults that are open, by where their units hang, those of units that are gone last; and what is hired in and not back. [UK10] */
export function faultList(rig: Rig, standing: Standing): Sheet {
  const { faults, hires } = recordOf(rig.cards);
  const { record } = standing;
  const open = sorted(
    rig,
    faults.filter(({ state }) => state === 'open'),
  );
  const out = hires.filter(({ returned }) => returned === '');
  return {
    kind: 'fault-list',
    columns: [],
    rows: [],
    length: 0,
    tables: [
      table('faults', ['faultOf', 'channel', 'type', 'mode', 'fault', 'seenBy', 'seenOn'], open, (fault) => {
        const fixture = getRow(rig.fixtures, fault.unit);
        const cells = [fixture?.channel ?? null, fixture?.type ?? null, fixture?.mode ?? null];
        return [record.unit(fault), ...cells, fault.what, fault.seenBy, fault.seenOn];
      }),
      table('hires', ['item', 'number', 'hiredFrom', 'due', 'stands', 'notes'], out, (hire) => [
        hire.item,
        hire.count,
        hire.from,
        hire.due,
        record.hire(hireState(hire, record.today)),
        hire.notes,
      ]),
    ],
    // Its findings may name any unit.
    foot: [
      ...plainCautions(record.cautions),
      ...cautionLines(rig, rowsOf(rig.fixtures), standing),
      ...findingLines(standing),
    ],
  };
}

function sorted(rig: Rig, faults: readonly Fault[]): readonly Fault[] {
  const rank = new Map<string, number>(byPlace(rig).map(({ id }, at) => [id, at] as const));
  const rankOf = ({ unit }: Fault) => rank.get(unit) ?? Number.MAX_SAFE_INTEGER;
  // A sort keeps those of one unit in the order of their days.
  return [...faults].sort((a, b) => rankOf(a) - rankOf(b));
}
