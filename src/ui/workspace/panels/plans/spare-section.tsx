import { useMemo } from 'react';
import { getRow } from '#base/table.ts';
import { modeOf } from '#engine/model/find-mode.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import { roomFor } from '#engine/patch/spare/room-for.ts';
import { SPARE_WORDS, spareSentence } from '#words/packing.ts';
import type { Sheet } from '../../../grid/sheet.ts';
import { useCalmRig } from '../../../live/use-calm-rig.ts';

export interface SpareSectionProps {
  readonly sheet: Sheet;
  readonly row: FixtureId | undefined;
}

/** How many more of the first selected unit's mode fit into the universes in use. */
export function SpareSection({ sheet, row }: SpareSectionProps) {
  const rig = useCalmRig(sheet.store);
  const fixture = row === undefined ? undefined : getRow(rig.fixtures, row);
  const mode = fixture === undefined ? undefined : modeOf(rig, fixture);
  const spare = useMemo(() => (mode === undefined ? undefined : roomFor(rig, mode.footprints)), [rig, mode]);
  const sentence =
    fixture === undefined
      ? SPARE_WORDS.none
      : mode === undefined || spare === undefined
        ? SPARE_WORDS.unknown
        : spareSentence(`${mode.type} ${mode.mode}`.trim(), spare);
  return (
    <section className="flex flex-col gap-2 border-t border-rule-strong pt-3">
      <h3>{SPARE_WORDS.title}</h3>
      <p>{sentence}</p>
    </section>
  );
}
