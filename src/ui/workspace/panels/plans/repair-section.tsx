import { useState } from 'react';
import { type FixtureId, positionId } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';
import { byPlace } from '#engine/sheet/sheet-order.ts';
import { REPAIR_WORDS } from '#words/packing.ts';
import type { Sheet } from '../../../grid/sheet.ts';
import { showRepair } from '../../../grid/show-packing.ts';
import { Button } from '../../../kit/button.tsx';
import { Select } from '../../../kit/select.tsx';
import { useCalmRig } from '../../../live/use-calm-rig.ts';

/** What moving a unit counts for that hangs where it is hardest to reach. */
const HARD = 5;

const SET = (['none', 'selected'] as const).map((value) => ({ value, label: REPAIR_WORDS.setChoices[value] }));

export interface RepairSectionProps {
  readonly sheet: Sheet;
  readonly rows: readonly FixtureId[];
}

/** Clears every clash of the rig at the least cost; shown before it is carried out. */
export function RepairSection({ sheet, rows }: RepairSectionProps) {
  const rig = useCalmRig(sheet.store);
  const [hard, setHard] = useState('');
  const [set, setSet] = useState<(typeof SET)[number]['value']>('none');
  const clear = () =>
    showRepair(sheet, {
      positionCosts: new Map(hard === '' ? [] : [[positionId(hard), HARD]]),
      alreadySet: new Set(set === 'selected' ? rows : []),
    });
  return (
    <section className="flex flex-col gap-2 border-t border-rule-strong pt-3">
      <h3>{REPAIR_WORDS.title}</h3>
      <p className="text-soft">{REPAIR_WORDS.about}</p>
      <Select
        label={REPAIR_WORDS.hard}
        hint={REPAIR_WORDS.hardHint}
        choices={[{ value: '', label: REPAIR_WORDS.nowhere }, ...positionsOf(rig)]}
        value={hard}
        onChoose={setHard}
      />
      <Select label={REPAIR_WORDS.set} hint={REPAIR_WORDS.setHint} choices={SET} value={set} onChoose={setSet} />
      <div>
        <Button onClick={clear}>{REPAIR_WORDS.clear}</Button>
      </div>
    </section>
  );
}

/** The positions that units hang at, in the rig's order, as the first unit there writes it. */
function positionsOf(rig: Rig) {
  const names = new Map<string, string>();
  for (const { position } of byPlace(rig)) {
    const id = positionId(position);
    if (id !== '' && !names.has(id)) names.set(id, position.trim());
  }
  return [...names].map(([value, label]) => ({ value, label }));
}
