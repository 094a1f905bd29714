import type { ReactNode } from 'react';
import type { Rig } from '#engine/model/rig.ts';
import { MOST_LOADS } from '#engine/network/runs/measured-run.ts';
import type { RunLine } from '#engine/network/runs/run-list.ts';
import { addRun, renameRun } from '#engine/patch/runs/run-plans.ts';
import { RUNS_WORDS as words } from '#words/runs.ts';
import { Button } from '../../kit/button.tsx';
import { LineField } from '../../kit/line-field.tsx';
import { Mark } from '../../kit/mark.tsx';
import type { RigStore } from '../../live/rig-store.ts';
import { CardCell } from '../../plant/card-cell.tsx';
import { PHONE, useMedia } from '../../workspace/use-media.ts';
import { carryOutSaying, type Said } from './run-desk.ts';
import { SourceChoice } from './source-choice.tsx';

export interface RunFactsProps {
  readonly store: RigStore;
  readonly rig: Rig;
  readonly chosen: RunLine;
  readonly writable: boolean;
  readonly onRenamed: (name: string) => void;
  readonly onSaid: (said: Said) => void;
}

/** What somebody says of a run, to be written here, and what that comes to. */
export function RunFacts({ store, rig, chosen, writable, onRenamed, onSaid }: RunFactsProps) {
  const { key, name, run, line, reach, units, carried } = chosen;
  const phone = useMedia(PHONE);
  const rename = (to: string) => {
    const said = carryOutSaying(store, renameRun(store.rig(), name, to), '');
    onSaid(said);
    if (said.did === 'step') onRenamed(to);
  };
  const cell = { store, rig, plan: 'set-run', card: 'run', of: key, disabled: !writable } as const;
  return (
    <div className="px-4 pb-2 sm:px-5">
      <p>
        {words.carries(carried)} · {words.units(units)} · {words.loads(line.loads, MOST_LOADS)} ·{' '}
        {words.length(line, reach)}
        {words.reachBy[reach.by]}
        {line.unknown > 0 ? ` · ${words.unknown(line.unknown)}` : ''}
      </p>
      {run === undefined ? (
        <p className="flex flex-wrap items-baseline gap-x-3 py-1">
          <span>
            <Mark severity="note" /> {words.undescribed}
          </span>
          <Button
            disabled={!writable}
            onClick={() => onSaid(carryOutSaying(store, addRun(store.rig(), name), words.added(name)))}
          >
            {words.describe}
          </Button>
        </p>
      ) : (
        <Folded phone={phone ? 'yes' : 'no'}>
          <Fact label={words.name} width="w-40">
            <LineField name={words.of(words.name, name)} value={name} disabled={!writable} onWrite={rename} />
          </Fact>
          <Fact label={words.from} width="w-56">
            <SourceChoice store={store} rig={rig} run={run} disabled={!writable} />
          </Fact>
          <Fact label={words.end} width="w-32">
            <CardCell {...cell} field="end" name={words.of(words.end, name)} />
          </Fact>
          <Fact label={words.lead} width="w-36">
            <CardCell {...cell} field="lead" name={words.of(words.lead, name)} />
          </Fact>
          <Fact label={words.reach} width="w-40">
            <CardCell {...cell} field="reach" name={words.of(words.reach, name)} placeholder={String(reach.metres)} />
          </Fact>
          <Fact label={words.notes} width="w-40">
            <CardCell {...cell} field="notes" name={words.of(words.notes, name)} />
          </Fact>
        </Folded>
      )}
    </div>
  );
}

interface FoldedProps {
  readonly phone: 'yes' | 'no';
  readonly children: ReactNode;
}

/** On a phone the line itself needs the room: what is said of it opens on a tap. */
function Folded({ phone, children }: FoldedProps) {
  const facts = <div className="flex flex-wrap gap-x-3 gap-y-1 pt-1">{children}</div>;
  if (phone === 'no') return facts;
  return (
    <details>
      <summary className="flex min-h-11 cursor-pointer items-center underline">{words.facts}</summary>
      {facts}
    </details>
  );
}

interface FactProps {
  readonly label: string;
  readonly width: string;
  readonly children: ReactNode;
}

const Fact = ({ label, width, children }: FactProps) => (
  <div className={`${width} max-w-full max-sm:w-[calc(50%-0.375rem)]`}>
    <div aria-hidden="true" className="truncate text-small text-soft">
      {label}
    </div>
    {children}
  </div>
);
