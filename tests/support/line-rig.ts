import { applyEdits } from '#engine/model/apply-edits.ts';
import { nameKey } from '#engine/model/card.ts';
import { setCard } from '#engine/model/card-edits.ts';
import type { Edit } from '#engine/model/edit.ts';
import type { CellValue } from '#engine/model/field.ts';
import type { Cells } from '#engine/model/fixture.ts';
import { fixtureId } from '#engine/model/ids.ts';
import { EMPTY_RIG, type Rig } from '#engine/model/rig.ts';

/** A rig of units of 16 slots, each by an id of its own. */
export function lineRig(units: readonly (Cells & { readonly id: string })[]): Rig {
  const mode: Edit = { kind: 'set-mode', type: 'Spot', mode: '16', footprints: [16] };
  const adds = units.map(
    ({ id, ...cells }): Edit => ({
      kind: 'add-fixture',
      fixture: fixtureId(id),
      cells: { type: 'Spot', mode: '16', ...cells },
    }),
  );
  return applyEdits(EMPTY_RIG, [mode, ...adds]);
}

/** The edits that describe a run. */
export const describedRun = (name: string, cells: Readonly<Record<string, CellValue>> = {}) =>
  setCard('run', nameKey(name), { name, ...cells });
