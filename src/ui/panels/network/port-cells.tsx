import { getRow } from '#base/table.ts';
import type { CardField } from '#engine/model/card.ts';
import { portKey } from '#engine/model/card.ts';
import type { NetworkNode } from '#engine/model/plant.ts';
import { carriedByPorts } from '#engine/network/carried.ts';
import { runsFromPort } from '#engine/network/universe-routes.ts';
import { NETWORK_WORDS as words } from '#words/network.ts';
import { CardCell } from '../../plant/card-cell.tsx';
import { FindingMarks } from './finding-marks.tsx';
import { isOfPort } from './finding-places.ts';
import { PortAddressCell } from './number-cell.tsx';
import type { NetworkView } from './use-network.ts';

export interface PortCellsProps {
  readonly view: NetworkView;
  readonly node: NetworkNode;
}

/** The ports of a device: what each listens to, what comes out of it, and on which run. */
export function PortCells({ view, node }: PortCellsProps) {
  const beyond = view.network.beyond.flatMap((each) => (each.node === node ? [each.port.index] : []));
  const heard = view.network.listeners.flatMap((each) => (each.node === node ? [each.port.index] : []));
  const counted = Array.from({ length: node.ports }, (_, i) => i + 1);
  const indices = [...new Set([...counted, ...heard, ...beyond])].sort((a, b) => a - b);
  if (indices.length === 0) return null;
  return (
    <ul className="mt-2 grid grid-cols-1 gap-2 sm:grid-cols-[repeat(auto-fill,minmax(16.5rem,1fr))]">
      {indices.map((index) => (
        <PortCell key={index} view={view} node={node} index={index} />
      ))}
    </ul>
  );
}

function PortCell({ view, node, index }: PortCellsProps & { readonly index: number }) {
  const { store, rig, network, findings, frozen } = view;
  const key = portKey(node.id, index);
  const port = network.plant.ports.get(key);
  const runs = runsFromPort(network.plant, key).map(({ name }) => name);
  const found = findings.filter((finding) => isOfPort(finding, node.id, index));
  const cell = (field: CardField<'port'>, heading: string) => ({
    store,
    rig,
    plan: 'set-network' as const,
    card: 'port' as const,
    of: key,
    field,
    name: words.ofPort(node.name, index, heading),
    disabled: frozen,
  });
  return (
    <li className="border border-rule bg-sheet px-2 py-1.5">
      <div className="flex items-center gap-2">
        <span className="w-6 shrink-0 text-right font-serif text-name font-semibold" title={words.port(index)}>
          {index}
        </span>
        <div className="w-24 shrink-0">
          <CardCell {...cell('by', words.portBy)} placeholder={words.free} />
        </div>
        {port?.by === 'art-net' ? (
          <PortAddressCell {...cell('number', words.portNumber)} />
        ) : (
          <CardCell {...cell('number', words.portNumber)} />
        )}
      </div>
      <div className="flex flex-wrap items-baseline gap-x-3 pt-1 pl-8">
        <span>{outWords(view, key)}</span>
        {runs.length === 0 ? null : <span className="text-soft">{runs.join(', ')}</span>}
        {found.length === 0 ? null : (
          <div className="w-full">
            <FindingMarks findings={found} />
          </div>
        )}
      </div>
    </li>
  );
}

/** `universe 3 · Bars 2 and 3`, several of them, or why there is none. */
function outWords({ rig, network }: NetworkView, key: string): string {
  const port = network.plant.ports.get(key);
  if (port === undefined || port.by === null || port.number === null) return '';
  const universes = carriedByPorts(network.plant).get(key) ?? [];
  if (universes.length === 0) return words.nothingOut;
  return universes
    .map((universe) => [`${words.universe} ${universe}`, getRow(rig.universes, String(universe))?.label ?? ''])
    .map((parts) => parts.filter((part) => part !== '').join(' · '))
    .join(', ');
}
