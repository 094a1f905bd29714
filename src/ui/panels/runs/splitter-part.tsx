import { plantOf, type Splitter } from '#engine/model/plant.ts';
import type { Rig } from '#engine/model/rig.ts';
import { removeSplitter } from '#engine/patch/runs/run-plans.ts';
import { RUNS_WORDS as words } from '#words/runs.ts';
import { Button } from '../../kit/button.tsx';
import type { RigStore } from '../../live/rig-store.ts';
import { CardCell } from '../../plant/card-cell.tsx';
import { carryOutSaying, type Said } from './run-desk.ts';

export interface SplitterPartProps {
  readonly store: RigStore;
  readonly rig: Rig;
  readonly splitter: Splitter;
  readonly writable: boolean;
  readonly onSaid: (said: Said) => void;
}

/** A splitter: its name and outputs, to be written here, and which run begins at each output. */
export function SplitterPart({ store, rig, splitter, writable, onSaid }: SplitterPartProps) {
  const { id, name, outputs } = splitter;
  const runs = [...plantOf(rig.cards).runs.values()];
  const at = (output: number) =>
    runs.flatMap(({ name: run, from }) =>
      from.kind === 'splitter' && from.splitter === id && from.output === output ? [run] : [],
    );
  const cell = { store, rig, plan: 'set-run', card: 'splitter', of: id, disabled: !writable } as const;
  return (
    <section aria-label={words.splitter(name)} className="flex flex-wrap items-end gap-3 px-4 pt-2 sm:px-5">
      <div className="w-48">
        <div aria-hidden="true" className="text-small text-soft">
          {words.splitterName}
        </div>
        <CardCell {...cell} field="name" name={words.splitterName} />
      </div>
      <div className="w-24">
        <div aria-hidden="true" className="text-small text-soft">
          {words.outputs}
        </div>
        <CardCell {...cell} field="outputs" name={words.outputs} />
      </div>
      <Button
        look="danger"
        disabled={!writable}
        onClick={() =>
          onSaid(carryOutSaying(store, removeSplitter(store.rig(), id), words.removed(words.splitter(name))))
        }
      >
        {words.removeSplitter}
      </Button>
      <ul className="w-full text-soft">
        {Array.from({ length: outputs }, (_, index) => index + 1).map((output) => (
          <li key={output}>{words.outputIs(output, at(output))}</li>
        ))}
      </ul>
    </section>
  );
}
