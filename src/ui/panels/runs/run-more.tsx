import { useState } from 'react';
import { randomId } from '#base/random-id.ts';
import { nameKey } from '#engine/model/card.ts';
import { plantOf, type Splitter } from '#engine/model/plant.ts';
import type { Rig } from '#engine/model/rig.ts';
import { unitsByRun } from '#engine/network/runs/run-chain.ts';
import { putSplitter } from '#engine/patch/runs/chain-plans.ts';
import { addSplitter, removeRun } from '#engine/patch/runs/run-plans.ts';
import { RUNS_WORDS as words } from '#words/runs.ts';
import { Button } from '../../kit/button.tsx';
import { LinkButton } from '../../kit/link-button.tsx';
import type { RigStore } from '../../live/rig-store.ts';
import { AddSplitterDialog } from './add-splitter-dialog.tsx';
import { carryOutSaying, type Said } from './run-desk.ts';

export interface RunMoreProps {
  readonly store: RigStore;
  readonly rig: Rig;
  /** Of the run. */
  readonly name: string;
  readonly writable: boolean;
  readonly onSaid: (said: Said) => void;
}

/** What is seldom done with a run: splitters put on it, and the run taken away. */
export function RunMore({ store, rig, name, writable, onSaid }: RunMoreProps) {
  const [asking, setAsking] = useState(false);
  const loose = looseSplitters(rig);
  return (
    <div className="flex flex-wrap gap-2 px-4 py-2 sm:px-5">
      <Button disabled={!writable} onClick={() => setAsking(true)}>
        {words.addSplitter}
      </Button>
      <Button
        look="danger"
        className="ml-auto"
        disabled={!writable}
        onClick={() => onSaid(carryOutSaying(store, removeRun(store.rig(), name), words.removed(name)))}
      >
        {words.remove}
      </Button>
      {loose.length === 0 ? null : (
        <section aria-label={words.loose} className="w-full">
          <h3 className="text-name">{words.loose}</h3>
          <ul>
            {loose.map(({ id, name: splitter }) => (
              <li key={id} className="flex flex-wrap items-baseline gap-x-3">
                {splitter}
                <LinkButton
                  disabled={!writable}
                  onClick={() =>
                    onSaid(carryOutSaying(store, putSplitter(store.rig(), id, name), words.putOnRun(splitter, name)))
                  }
                >
                  {words.putHere}
                </LinkButton>
              </li>
            ))}
          </ul>
        </section>
      )}
      {asking ? (
        <AddSplitterDialog
          onSplitter={(made) => {
            const plan = addSplitter(store.rig(), { id: randomId(), run: name, ...made });
            onSaid(carryOutSaying(store, plan, words.added(made.name.trim())));
            setAsking(false);
          }}
          onClose={() => setAsking(false)}
        />
      ) : null}
    </div>
  );
}

/** Splitters that stand on none of the runs that are shown. */
function looseSplitters(rig: Rig): readonly Splitter[] {
  const { runs, splitters } = plantOf(rig.cards);
  const named = unitsByRun(rig.fixtures);
  return splitters.filter(({ run }) => !runs.has(nameKey(run)) && !named.has(nameKey(run)));
}
