import { useState } from 'react';
import type { Rig } from '#engine/model/rig.ts';
import type { Station } from '#engine/network/runs/measured-run.ts';
import type { RunLine } from '#engine/network/runs/run-list.ts';
import { ADD_UNITS_WORDS, RUNS_WORDS as words } from '#words/runs.ts';
import { Button } from '../../kit/button.tsx';
import type { RigStore } from '../../live/rig-store.ts';
import { AddUnitsDialog } from './add-units-dialog.tsx';
import type { Said } from './run-desk.ts';

export interface RunToolsProps {
  readonly store: RigStore;
  readonly rig: Rig;
  readonly chosen: RunLine;
  readonly here: Station | undefined;
  readonly writable: boolean;
  readonly onMove: (step: 1 | -1) => void;
  readonly onTakeOff: () => void;
  readonly onOpen: () => void;
  readonly onSaid: (said: Said) => void;
}

/** What can be done with what is chosen on a run, always in view and within reach of the thumb. */
export function RunTools(props: RunToolsProps) {
  const { store, rig, chosen, here, writable, onMove, onTakeOff, onOpen, onSaid } = props;
  const [asking, setAsking] = useState(false);
  const { line } = chosen;
  const step = here !== undefined && writable;
  return (
    <div className="sticky bottom-0 mt-auto flex flex-wrap gap-2 border-t border-rule-strong bg-paper px-4 py-2 sm:px-5 max-sm:gap-1 max-sm:[&>button]:px-2">
      <Button look="main" disabled={!writable} onClick={() => setAsking(true)}>
        {ADD_UNITS_WORDS.open}
      </Button>
      <Button disabled={!step || here.place === 1} onClick={() => onMove(-1)}>
        {words.up}
      </Button>
      <Button disabled={!step || here.place === line.stations.length} onClick={() => onMove(1)}>
        {words.down}
      </Button>
      <Button disabled={!step} onClick={onTakeOff}>
        {words.takeOff}
      </Button>
      <Button disabled={here?.link.kind !== 'unit'} onClick={onOpen}>
        {words.slots}
      </Button>
      {asking ? (
        <AddUnitsDialog
          store={store}
          rig={rig}
          chosen={chosen}
          here={here}
          onSaid={onSaid}
          onClose={() => setAsking(false)}
        />
      ) : null}
    </div>
  );
}
