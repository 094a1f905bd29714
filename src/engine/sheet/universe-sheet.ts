import { getRow } from '#base/table.ts';
import { type Claim, slotRuns } from '../address/claim.ts';
import type { Fixture } from '../model/fixture.ts';
import type { Rig } from '../model/rig.ts';
import {
  cautionLines,
  findingLines,
  rowsFrom,
  type Sheet,
  type SheetCell,
  type SheetColumn,
  type Standing,
} from './sheet.ts';
import { byPlace } from './sheet-order.ts';

const COLUMNS = [
  'universe',
  'label',
  'first',
  'last',
  'footprint',
  'channel',
  'position',
  'unit',
  'type',
  'mode',
  'break',
  'purpose',
] as const satisfies readonly SheetColumn[];

/** One row per occupied run of slots, by universe and slot: what each slot of each universe belongs to. */
export function universeSheet(rig: Rig, standing: Standing): Sheet {
  const runs: { readonly fixture: Fixture; readonly claim: Claim }[] = [];
  for (const fixture of byPlace(rig)) for (const claim of slotRuns(rig, fixture)) runs.push({ fixture, claim });
  runs.sort((a, b) => a.claim.universe - b.claim.universe || a.claim.first - b.claim.first);
  const rows = rowsFrom(runs, ({ fixture, claim }): readonly SheetCell[] => [
    claim.universe,
    getRow(rig.universes, String(claim.universe))?.label ?? null,
    claim.first,
    claim.last,
    claim.last - claim.first + 1 + claim.over,
    fixture.channel,
    fixture.position,
    fixture.unit,
    fixture.type,
    fixture.mode,
    claim.part,
    fixture.purpose,
  ]);
  const claimants = new Set(runs.map(({ fixture }) => fixture));
  const foot = [...cautionLines(rig, claimants, standing), ...findingLines(standing)];
  return { kind: 'universes', columns: COLUMNS, ...rows, foot };
}
