import { nameKey } from '#engine/model/card.ts';
import type { CircuitLoad } from '#engine/supply/circuit-loads.ts';
import { addNamed } from '#engine/supply/feed-plans.ts';
import { circuitFigures, circuitRemarks, usableText, SUPPLY_WORDS as words } from '#words/supply.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import { CardCell } from '../../plant/card-cell.tsx';
import { CircuitBar } from '../../plant/circuit-bar.tsx';
import { FindingLines } from '../../plant/finding-lines.tsx';
import { Labelled } from '../../plant/labelled.tsx';
import { CardActs } from './card-acts.tsx';
import { carryOut, type Scene } from './scene.ts';
import { SupplyChoice } from './supply-choice.tsx';
import { UnitChips } from './unit-chips.tsx';

export interface CircuitRowProps {
  readonly scene: Scene;
  readonly load: CircuitLoad;
  readonly scale: number;
}

/** One circuit: what it is, its load against its breaker, and the units on it. */
export function CircuitRow({ scene, load, scale }: CircuitRowProps) {
  const { key, card, usable, asks, amps, units } = load;
  const name = key === '' ? words.noCircuit : load.circuit;
  return (
    <section
      aria-label={name}
      className="grid grid-cols-[minmax(0,2fr)_minmax(0,3fr)] gap-x-6 gap-y-2 max-lg:grid-cols-1"
    >
      <div className="flex flex-col gap-1">
        <CircuitBar load={load} rules={scene.rules} name={name} scale={scale} />
        <p className="text-small text-soft">
          {circuitFigures(load)} ·{' '}
          {usable !== null ? usableText(usable, scene.rules) : amps > 0 ? words.asks(asks) : ''}
        </p>
        {card === undefined && key !== '' ? <Describe scene={scene} name={name} /> : null}
        {card === undefined ? null : (
          <div className="flex gap-x-4">
            <CardActs scene={scene} card="circuit" of={key} name={name} />
          </div>
        )}
      </div>
      <div className="flex min-w-0 flex-col gap-2">
        {card === undefined ? null : <Cells scene={scene} of={key} name={name} />}
        <UnitChips scene={scene} units={units} none={words.noUnits} />
        <FindingLines
          rig={scene.rig}
          findings={scene.findings.filter((finding) => 'circuit' in finding && nameKey(finding.circuit) === key)}
        />
        <p className="text-small text-soft empty:hidden">{circuitRemarks(load).join(' ')}</p>
      </div>
    </section>
  );
}

function Describe({ scene, name }: { readonly scene: Scene; readonly name: string }) {
  if (scene.writable === 'no') return null;
  return (
    <div>
      <LinkButton
        aria-label={words.describeName(name)}
        onClick={() => carryOut(scene, addNamed(scene.store.rig(), 'circuit', name))}
      >
        {words.describe}
      </LinkButton>
    </div>
  );
}

interface CellsProps {
  readonly scene: Scene;
  readonly of: string;
  readonly name: string;
}

function Cells({ scene, of, name }: CellsProps) {
  const cell = {
    store: scene.store,
    rig: scene.rig,
    plan: 'set-supply',
    card: 'circuit',
    of,
    disabled: scene.writable === 'no',
  } as const;
  return (
    <div className="grid grid-cols-5 gap-2 max-sm:grid-cols-2">
      <Labelled label={words.cells.breakerAmps}>
        <CardCell {...cell} field="rating" name={words.cellOf(words.cells.breakerAmps, name)} />
      </Labelled>
      <Labelled label={words.cells.breaker}>
        <CardCell {...cell} field="breaker" name={words.cellOf(words.cells.breaker, name)} />
      </Labelled>
      <Labelled label={words.cells.supply}>
        <SupplyChoice scene={scene} of={of} name={name} />
      </Labelled>
      <Labelled label={words.cells.phase}>
        <CardCell {...cell} field="phase" name={words.cellOf(words.cells.phase, name)} />
      </Labelled>
      <Labelled label={words.cells.notes}>
        <CardCell {...cell} field="notes" name={words.cellOf(words.cells.notes, name)} />
      </Labelled>
    </div>
  );
}
