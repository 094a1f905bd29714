import { isSacnUniverse, multicastGroup } from '#engine/address/sacn-universe.ts';
import type { CardField } from '#engine/model/card.ts';
import type { UniverseRoute } from '#engine/network/universe-routes.ts';
import { NETWORK_WORDS as words } from '#words/network.ts';
import { StayLink } from '../../kit/stay-link.tsx';
import type { Column } from '../../kit/table.tsx';
import { LINK_CLASSES } from '../../kit/text-link.tsx';
import { CardCell } from '../../plant/card-cell.tsx';
import { rigPath } from '../rig/rig-address.ts';
import { FindingMarks } from './finding-marks.tsx';
import { isOfUniverse } from './finding-places.ts';
import { PortAddressCell } from './number-cell.tsx';
import { SenderCell } from './sender-cell.tsx';
import { universeAnchor } from './universe-anchor.ts';
import type { NetworkView } from './use-network.ts';

/** What stands of each universe: its three numbers side by side, how it is sent, where it comes out. */
export function universeColumns(view: NetworkView): readonly Column<UniverseRoute>[] {
  const cell = ({ universe }: UniverseRoute, field: CardField<'delivery'>, heading: string) => ({
    store: view.store,
    rig: view.rig,
    plan: 'set-network' as const,
    card: 'delivery' as const,
    of: String(universe),
    field,
    name: words.ofUniverse(universe, heading),
    disabled: view.frozen,
  });
  const byNetwork = ({ delivery }: UniverseRoute) => delivery !== undefined && delivery.by !== 'cable';
  return [
    { key: 'universe', heading: words.universe, cell: (route) => <UniverseName view={view} route={route} /> },
    {
      key: 'by',
      heading: words.by,
      cell: (route) => (
        <Wide at="w-24">
          <CardCell {...cell(route, 'by', words.by)} />
        </Wide>
      ),
    },
    {
      key: 'sacn',
      heading: words.sacn,
      cell: (route) => (
        <div className="flex flex-wrap items-center gap-x-2">
          <Wide at="w-16">
            <CardCell {...cell(route, 'sacn', words.sacn)} />
          </Wide>
          <span className="font-mono text-small text-soft">{groupOf(route)}</span>
        </div>
      ),
    },
    {
      key: 'portAddress',
      heading: words.portAddress,
      cell: (route) => (
        <Wide at="w-36">
          <PortAddressCell {...cell(route, 'portAddress', words.portAddress)} />
        </Wide>
      ),
    },
    {
      key: 'cast',
      heading: words.cast,
      cell: (route) =>
        byNetwork(route) ? (
          <Wide at="w-28">
            <CardCell {...cell(route, 'cast', words.cast)} />
          </Wide>
        ) : null,
    },
    {
      key: 'priority',
      heading: words.priority,
      cell: (route) =>
        route.delivery?.by === 'sacn' ? (
          // What E1.31 takes where none is sent otherwise.
          <Wide at="w-16">
            <CardCell {...cell(route, 'priority', words.priority)} placeholder="100" />
          </Wide>
        ) : null,
    },
    {
      key: 'sender',
      heading: words.sender,
      cell: (route) =>
        byNetwork(route) ? (
          <Wide at="w-36">
            <SenderCell view={view} universe={route.universe} sender={route.delivery?.sender ?? ''} />
          </Wide>
        ) : null,
    },
    { key: 'outlets', heading: words.outlets, cell: (route) => outletWords(route) },
    { key: 'runs', heading: words.runs, cell: ({ runs }) => runs.map(({ name }) => name).join(', ') },
    {
      key: 'found',
      heading: words.found,
      cell: ({ universe }) => (
        <FindingMarks findings={view.findings.filter((finding) => isOfUniverse(finding, universe))} />
      ),
    },
  ];
}

/** A control as wide as what it holds, and as its card on a phone. */
function Wide({ at, children }: { readonly at: string; readonly children: React.ReactNode }) {
  return <div className={`${at} max-sm:w-full`}>{children}</div>;
}

function UniverseName({ view, route }: { readonly view: NetworkView; readonly route: UniverseRoute }) {
  const { universe, label, use } = route;
  return (
    <div id={universeAnchor(universe)} tabIndex={-1} className="flex max-w-56 items-baseline gap-2">
      <StayLink
        className={`${LINK_CLASSES} font-serif text-name font-semibold`}
        href={`${rigPath(view.rigId, 'universes')}#${universeAnchor(universe)}`}
        aria-label={words.toRibbon(universe)}
      >
        {universe}
      </StayLink>
      <span className="min-w-0 truncate text-soft">
        {[label, use === 'used' ? '' : words.unused].filter(Boolean).join(' · ')}
      </span>
    </div>
  );
}

const groupOf = ({ delivery }: UniverseRoute): string => {
  const sacn = delivery?.sacn ?? null;
  return sacn !== null && isSacnUniverse(sacn) ? multicastGroup(sacn).ipv4 : '';
};

function outletWords({ delivery, outlets }: UniverseRoute): string {
  if (outlets.length > 0) return outlets.map(({ node, port }) => `${node.name} · ${port.index}`).join(', ');
  return delivery === undefined || delivery.by === 'cable' ? '' : words.nowhere;
}
