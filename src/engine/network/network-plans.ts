import { ok, type Result, refuse } from '#base/result.ts';
import { getRow } from '#base/table.ts';
import { portAddressByConvention } from '../address/convention.ts';
import { isSacnUniverse } from '../address/sacn-universe.ts';
import type { Universe } from '../model/address.ts';
import { type CardEdit, type Convention, cardId, type Protocol, portKey } from '../model/card.ts';
import { removeCard, setCard } from '../model/card-edits.ts';
import type { Plan } from '../model/edit.ts';
import { type NetworkNode, plantOf } from '../model/plant.ts';
import type { Rig } from '../model/rig.ts';
import type { PlanRefusal } from '../patch/plan-refusal.ts';
import { networkNumber } from './carried.ts';
import { hearersOf, networkOf } from './network.ts';

/** How universes are to travel, and which numbers to write. */
export interface FillAsk {
  readonly universes: readonly Universe[];
  readonly by: Protocol;
  /** `both`: the number of the other protocol as well, so that all three stand side by side. */
  readonly numbers: 'needed' | 'both';
}

/**
 * Says of universes how they travel, where nobody has: protocol, sACN number (the show's own), Port-Address (of the sACN number by the
 * crew's convention). What stands there already stays. [NW31]
 */
export function fillDeliveries(rig: Rig, { universes, by, numbers }: FillAsk): Result<Plan, PlanRefusal> {
  if (universes.length === 0) return refuse({ code: 'changes-nothing' });
  const { setup } = plantOf(rig.cards);
  const edits: CardEdit[] = [];
  for (const universe of universes) {
    const cells = getRow(rig.cards, cardId('delivery', String(universe)))?.cells ?? {};
    const travels = cells.by ?? by;
    if (travels === 'cable') continue;
    const wants = (protocol: Protocol) => travels === protocol || numbers === 'both';
    const sacn = cells.sacn ?? universe;
    const set: { by?: string; sacn?: number; portAddress?: number } = {};
    if (cells.by === undefined) set.by = by;
    if (cells.sacn === undefined && wants('sacn')) set.sacn = universe;
    if (cells.portAddress === undefined && wants('art-net')) {
      const address = conventionalAddress(universe, sacn, setup.convention);
      if (!address.ok) return address;
      set.portAddress = address.value;
    }
    edits.push(...setCard('delivery', String(universe), set));
  }
  return edits.length === 0 ? refuse({ code: 'changes-nothing' }) : ok({ name: 'set-network', edits });
}

function conventionalAddress(
  universe: Universe,
  sacn: unknown,
  convention: Convention | null,
): Result<number, PlanRefusal> {
  if (convention === null) return refuse({ code: 'no-convention' });
  const number = typeof sacn === 'number' && isSacnUniverse(sacn) ? sacn : null;
  const address = number === null ? null : portAddressByConvention(number, convention);
  return address === null ? refuse({ code: 'no-port-address', universe }) : ok(address);
}

/** The universes in use of which something is missing that `fillDeliveries` would write. */
export function unsaidUniverses(rig: Rig, used: readonly Universe[]): readonly Universe[] {
  const { deliveries } = plantOf(rig.cards);
  return used.filter((universe) => {
    const delivery = deliveries.get(universe);
    return delivery === undefined || (delivery.by !== 'cable' && networkNumber(delivery) === null);
  });
}

/** Gives the free ports of a node, in order, the next universes from `from` on that travel by a network and that no port listens to. [NW32] */
export function listenPlan(rig: Rig, node: string, from: Universe | null): Result<Plan, PlanRefusal> {
  const network = networkOf(plantOf(rig.cards));
  const at = network.nodes.get(node);
  const free = at === undefined ? [] : freePorts(rig, at);
  if (free.length === 0) return refuse({ code: 'no-free-port', node: at?.name ?? '' });
  const next = [...network.plant.deliveries.values()]
    .filter((each) => each.universe >= (from ?? 1) && networkNumber(each) !== null)
    .filter((each) => hearersOf(network, each).length === 0)
    .sort((a, b) => a.universe - b.universe);
  const edits = free.flatMap((key, i) => {
    const delivery = next[i];
    if (delivery === undefined || delivery.by === 'cable') return [];
    return setCard('port', key, { by: delivery.by, number: networkNumber(delivery) });
  });
  return edits.length === 0 ? refuse({ code: 'nothing-unheard' }) : ok({ name: 'set-network', edits });
}

/** The keys of the ports of a node that listen to nothing yet. */
function freePorts(rig: Rig, { id, ports }: NetworkNode): readonly string[] {
  return Array.from({ length: ports }, (_, i) => portKey(id, i + 1)).filter((key) => {
    const cells = getRow(rig.cards, cardId('port', key))?.cells;
    return cells?.by === undefined && cells?.number === undefined;
  });
}

/** A new device of the network. */
export const addNodePlan = (id: string, name: string, role: NetworkNode['role']): Plan => ({
  name: 'set-network',
  edits: setCard('node', id, role === 'node' ? { name, role, ports: FEW_PORTS } : { name, role }),
});

/** As many ports as a reply of Art-Net has at the most: a start that people correct. */
const FEW_PORTS = 4;

/** Takes a device away with its ports; what named it as its sender, or began at its ports, names nothing any more. [NW33] */
export function removeNodePlan(rig: Rig, id: string): Plan {
  const { ports, deliveries, runs } = plantOf(rig.cards);
  const gone = [...ports.values()].filter(({ node }) => node === id);
  const sent = [...deliveries.values()].filter(({ sender }) => sender === id);
  const begun = [...runs.values()].filter(({ from }) => from.kind === 'port' && from.port.startsWith(`${id}.`));
  return {
    name: 'set-network',
    edits: [
      ...removeCard(rig, 'node', id),
      ...gone.flatMap(({ key }) => removeCard(rig, 'port', key)),
      ...sent.flatMap(({ universe }) => setCard('delivery', String(universe), { sender: null })),
      ...begun.flatMap(({ key }) => setCard('run', key, { from: null })),
    ],
  };
}
