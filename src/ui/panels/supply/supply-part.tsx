import { nameKey } from '#engine/model/card.ts';
import type { Finding } from '#engine/model/finding.ts';
import type { SupplyLoad } from '#engine/supply/supply-loads.ts';
import { supplyAbout, supplyTotal, SUPPLY_WORDS as words } from '#words/supply.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import { CardCell } from '../../plant/card-cell.tsx';
import { FindingLines } from '../../plant/finding-lines.tsx';
import { Labelled } from '../../plant/labelled.tsx';
import { LoadBar } from '../../plant/load-bar.tsx';
import { AddNamed } from './add-named.tsx';
import { CardActs } from './card-acts.tsx';
import { CircuitList } from './circuit-list.tsx';
import type { Scene } from './scene.ts';

export interface SupplyPartProps {
  readonly scene: Scene;
  readonly load: SupplyLoad;
}

const FIELDS = ['phases', 'volts', 'rating', 'third', 'notes'] as const;

/** One supply: its lines and neutral against their limit, and its circuits. */
export function SupplyPart({ scene, load }: SupplyPartProps) {
  const { supply } = load;
  const { name, key } = supply;
  return (
    <section aria-label={name} className="flex flex-col gap-3">
      <div className="flex flex-wrap items-baseline gap-x-4 gap-y-1">
        <h3 className="text-name [overflow-wrap:anywhere]">{name}</h3>
        <p className="text-soft">{supplyAbout(load)}</p>
        <p className="text-soft">{supplyTotal(load)}</p>
        <div className="ml-auto flex flex-wrap gap-x-4 max-sm:ml-0">
          {scene.writable === 'yes' && supply.phases === 3 ? (
            <LinkButton onClick={() => scene.onAsk({ kind: 'balance', supply: key })}>{words.balance}</LinkButton>
          ) : null}
          <CardActs scene={scene} card="supply" of={key} name={name} />
        </div>
      </div>
      <div className="grid grid-cols-5 gap-3 max-sm:grid-cols-2">
        {FIELDS.map((field) => (
          <Labelled key={field} label={words.cells[field]}>
            <CardCell
              store={scene.store}
              rig={scene.rig}
              plan="set-supply"
              card="supply"
              of={key}
              field={field}
              name={words.cellOf(words.cells[field], name)}
              {...placeholderOf(scene, field)}
              disabled={scene.writable === 'no'}
            />
          </Labelled>
        ))}
      </div>
      <Lines scene={scene} load={load} />
      <FindingLines rig={scene.rig} findings={scene.findings.filter((finding) => isOfSupply(finding, key))} />
      <div className="flex flex-col gap-2 pl-4 max-sm:pl-0">
        <CircuitList scene={scene} circuits={load.circuits} />
        <div>
          <AddNamed scene={scene} kind="circuit" supply={name} />
        </div>
      </div>
    </section>
  );
}

function placeholderOf({ rules }: Scene, field: (typeof FIELDS)[number]) {
  if (field === 'volts') return { placeholder: String(rules.volts) };
  if (field === 'third') return { placeholder: words.linear };
  return field === 'phases' ? { placeholder: '3' } : {};
}

/** What is said of circuits stands at the circuits. */
const isOfSupply = (finding: Finding, key: string) =>
  'supply' in finding && !('circuit' in finding) && nameKey(finding.supply) === key;

function Lines({ scene, load }: SupplyPartProps) {
  const { supply, lines, neutral, circuits, unseated } = load;
  const isSure =
    unseated.length === 0 && circuits.every(({ unknown, factorless }) => unknown.length + factorless.length === 0);
  const bar = { limit: supply.rating, unit: 'amps', known: isSure ? 'all' : 'least' } as const;
  const scale = Math.max(...lines, neutral);
  return (
    <ul className="grid grid-cols-4 gap-x-6 gap-y-3 max-lg:grid-cols-2 max-sm:grid-cols-1">
      {lines
        .map((amps, at) => ({ amps, name: words.line(at + 1, lines.length) }))
        .map(({ amps, name }) => (
          <li key={name}>
            <LoadBar {...bar} name={name} held={amps} share={scene.rules.share} scale={scale} />
          </li>
        ))}
      <li>
        <LoadBar {...bar} name={words.neutral} held={neutral} scale={scale} />
      </li>
    </ul>
  );
}
