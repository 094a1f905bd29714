import { getRow, rowsOf } from '#base/table.ts';
import type { OccupancyIndex } from '#engine/address/occupancy-index.ts';
import type { Universe } from '#engine/model/address.ts';
import type { Finding } from '#engine/model/finding.ts';
import type { Rig } from '#engine/model/rig.ts';
import type { UniverseChoice } from './universe-list.tsx';

/** Universes that are used or labelled, ascending. */
export function universeChoices(
  rig: Rig,
  occupancy: OccupancyIndex,
  findings: readonly Finding[],
): readonly UniverseChoice[] {
  const labelled = [...rowsOf(rig.universes)].map(({ universe }) => universe);
  const universes = [...new Set<Universe>([...occupancy.universes(), ...labelled])].sort((a, b) => a - b);
  const clashing = new Set(
    findings.flatMap((finding) => (finding.rule === 'slots-claimed-twice' ? [finding.run.universe] : [])),
  );
  return universes.map((universe) => ({
    universe,
    label: getRow(rig.universes, String(universe))?.label ?? '',
    freeSlots: occupancy.of(universe).freeSlots,
    clashes: clashing.has(universe),
  }));
}
