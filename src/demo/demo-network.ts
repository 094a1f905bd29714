import type { CardEdit } from '#engine/model/card.ts';
import { portKey, SETUP_KEY } from '#engine/model/card.ts';
import { setCard } from '#engine/model/card-edits.ts';

const DESK = 'demo-desk';
const BRIDGE = 'demo-bridge-node';
const STAGE = 'demo-stage-node';

/** The show's network: a desk and two nodes, its four universes under their own numbers. Makers and places are invented. */
export const DEMO_NETWORK: readonly CardEdit[] = [
  ...setCard('setup', SETUP_KEY, { convention: 'same-number' }),
  ...setCard('node', DESK, { name: 'Desk', role: 'source', address: '2.0.0.10', mask: '255.0.0.0', link: 1000 }),
  ...setCard('node', BRIDGE, {
    name: 'Bridge node',
    role: 'node',
    address: '2.0.0.21',
    mask: '255.0.0.0',
    ports: 4,
    together: 4,
    link: 100,
    position: 'Front bridge',
  }),
  ...setCard('node', STAGE, {
    name: 'Stage node',
    role: 'node',
    address: '2.0.0.22',
    mask: '255.0.0.0',
    ports: 4,
    together: 4,
    link: 100,
    position: 'Deck',
    notes: 'Under the gallery stair',
  }),
  ...[1, 2, 3].flatMap((universe) => delivery(universe, { by: 'sacn', cast: 'multicast' })),
  ...delivery(4, { by: 'art-net', cast: 'unicast' }),
  ...setCard('port', portKey(BRIDGE, 1), { by: 'sacn', number: 1 }),
  ...setCard('port', portKey(BRIDGE, 2), { by: 'sacn', number: 2 }),
  ...setCard('port', portKey(STAGE, 1), { by: 'sacn', number: 3 }),
  ...setCard('port', portKey(STAGE, 2), { by: 'art-net', number: 4 }),
];

function delivery(universe: number, way: { readonly by: string; readonly cast: string }): readonly CardEdit[] {
  return setCard('delivery', String(universe), { ...way, sacn: universe, portAddress: universe, sender: DESK });
}
