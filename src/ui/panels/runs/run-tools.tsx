import { useState } from 'react';
import { randomId } from '#base/random-id.ts';
import { plantOf } from '#engine/model/plant.ts';
import type { Rig } from '#engine/model/rig.ts';
import type { Station } from '#engine/network/runs/measured-run.ts';
import type { RunLine } from '#engine/network/runs/run-list.ts';
import { putSplitter } from '#engine/patch/runs/chain-plans.ts';
import { addSplitter, removeRun } from '#engine/patch/runs/run-plans.ts';
import { ADD_UNITS_WORDS, RUNS_WORDS as words } from '#words/runs.ts';
import { Button } from '../../kit/button.tsx';
import { LinkButton } from '../../kit/link-button.tsx';
import type { RigStore } from '../../live/rig-store.ts';
import { AddSplitterDialog } from './add-splitter-dialog.tsx';
import { AddUnitsDialog } from './add-units-dialog.tsx';
import { carryOutPlan, type Said } from './run-desk.ts';

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

/** What can be done with a run and with what is chosen on it, within reach of the thumb. */
export function RunTools(props: RunToolsProps) {
  const { store, rig, chosen, here, writable, onMove, onTakeOff, onOpen, onSaid } = props;
  const [asking, setAsking] = useState<'units' | 'splitter'>();
  const { name, line } = chosen;
  const loose = plantOf(rig.cards).splitters.filter(({ run }) => run.trim() === '');
  const step = here !== undefined && writable;
  return (
    <div className="flex flex-wrap gap-2 bg-paper px-4 py-2 max-sm:sticky max-sm:bottom-0 max-sm:border-t max-sm:border-rule-strong sm:px-5">
      <Button look="main" disabled={!writable} onClick={() => setAsking('units')}>
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
      <Button disabled={!writable} onClick={() => setAsking('splitter')}>
        {words.addSplitter}
      </Button>
      <Button
        look="danger"
        className="sm:ml-auto"
        disabled={!writable}
        onClick={() => onSaid(carryOutPlan(store, removeRun(store.rig(), name), words.removed(name)))}
      >
        {words.remove}
      </Button>
      {loose.length === 0 ? null : (
        <section aria-label={words.loose} className="w-full">
          <h3 className="text-name">{words.loose}</h3>
          <ul>
            {loose.map((splitter) => (
              <li key={splitter.id} className="flex flex-wrap items-baseline gap-x-3">
                {splitter.name}
                <LinkButton
                  disabled={!writable}
                  onClick={() => onSaid(carryOutPlan(store, putSplitter(store.rig(), splitter.id, name), ''))}
                >
                  {words.putHere}
                </LinkButton>
              </li>
            ))}
          </ul>
        </section>
      )}
      {asking === 'units' ? (
        <AddUnitsDialog
          store={store}
          rig={rig}
          chosen={chosen}
          here={here}
          onSaid={onSaid}
          onClose={() => setAsking(undefined)}
        />
      ) : null}
      {asking === 'splitter' ? (
        <AddSplitterDialog
          onSplitter={(made) => {
            const plan = addSplitter(store.rig(), { id: randomId(), run: name, ...made });
            onSaid(carryOutPlan(store, plan, words.added(made.name.trim())));
            setAsking(undefined);
          }}
          onClose={() => setAsking(undefined)}
        />
      ) : null}
    </div>
  );
}
