import { useState } from 'react';
import { getRow } from '#base/table.ts';
import type { FixtureId, ModeId } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';
import { needsOfMode } from '#engine/patch/spare/change-needs.ts';
import { modeChoices, modeSentences, NEEDS_WORDS } from '#words/needs.ts';
import { planRefusalSentence } from '#words/plans.ts';
import { Button } from '../../../kit/button.tsx';
import { Select } from '../../../kit/select.tsx';
import type { RigStore } from '../../../live/rig-store.ts';

export interface ModeNeedsProps {
  readonly store: RigStore;
  readonly rig: Rig;
  readonly rows: readonly FixtureId[];
}

/** Asks what it would need to set the selected units to another mode. */
export function ModeNeeds({ store, rig, rows }: ModeNeedsProps) {
  const choices = modeChoices(rig);
  const first = choices[0]?.value;
  const [chosen, setChosen] = useState<ModeId>();
  const [said, setSaid] = useState<readonly string[]>([]);
  if (first === undefined) return null;
  const id = chosen ?? first;
  const ask = () => {
    const mode = getRow(store.rig().modes, id);
    if (mode === undefined) return;
    const needs = needsOfMode(store.rig(), rows, mode, store.occupancy());
    setSaid(needs.ok ? modeSentences(needs.value, store.rig()) : [planRefusalSentence(needs.error, store.rig())]);
  };
  return (
    <div className="flex flex-col gap-2">
      <h4 className="font-semibold">{NEEDS_WORDS.change}</h4>
      <Select
        label={NEEDS_WORDS.to(rows.length)}
        choices={choices}
        value={id}
        onChoose={(mode) => {
          setChosen(mode);
          setSaid([]);
        }}
      />
      <div>
        <Button disabled={rows.length === 0} onClick={ask}>
          {NEEDS_WORDS.askMode}
        </Button>
      </div>
      <div role="status">
        {said.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </div>
    </div>
  );
}
