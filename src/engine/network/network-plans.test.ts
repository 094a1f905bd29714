import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { randomCardEdit } from '#tests/support/random-card.ts';
import { randomRig } from '#tests/support/random-rig.ts';
import { rigOf } from '#tests/support/rig-shorthand.ts';
import { universesInUse } from '../address/occupancy.ts';
import { checkRig } from '../check/check-rig.ts';
import type { Universe } from '../model/address.ts';
import { applyEdits } from '../model/apply-edits.ts';
import type { CardEdit, Convention } from '../model/card.ts';
import { setCard } from '../model/card-edits.ts';
import type { Plan } from '../model/edit.ts';
import { plantOf } from '../model/plant.ts';
import type { Rig } from '../model/rig.ts';
import { type FillAsk, fillDeliveries, listenPlan, removeNodePlan, unsaidUniverses } from './network-plans.ts';
import { universeRoutes } from './universe-routes.ts';

const THREE = '1:1 Spot/16\n2:1 Spot/16\n3:1 Spot/16';
const rigWith = (...edits: readonly (readonly CardEdit[])[]) => applyEdits(rigOf(THREE), edits.flat());
const convention = (which: Convention) => setCard('setup', 'rig', { convention: which });
const all = [1, 2, 3] as Universe[];

/** `1 sacn 1 0:5`: universe, protocol, sACN number, Port-Address. */
const ways = (rig: Rig) =>
  [...plantOf(rig.cards).deliveries.values()]
    .map(({ universe, by, sacn, portAddress }) => `${universe} ${by} ${sacn ?? '-'} ${portAddress ?? '-'}`)
    .sort();
const planned = (rig: Rig, plan: Plan) => applyEdits(rig, plan.edits);

function fill(rig: Rig, ask: Partial<FillAsk>): string | string[] {
  const plan = fillDeliveries(rig, { universes: all, by: 'sacn', numbers: 'needed', ...ask });
  return plan.ok ? ways(planned(rig, plan.value)) : plan.error.code;
}

describe('filling deliveries', () => {
  it('[NW31] gives sACN the number of the show, and asks for no convention then', () => {
    expect(fill(rigWith(), {})).toEqual(['1 sacn 1 -', '2 sacn 2 -', '3 sacn 3 -']);
  });

  // Both conventions are in use and neither is in a standard (common practice): check values 82 to 86 hold their arithmetic.
  it('[NW31] gives Port-Addresses by the convention of the crew alone', () => {
    expect(fill(rigWith(), { by: 'art-net' })).toBe('no-convention');
    expect(fill(rigWith(), { numbers: 'both' })).toBe('no-convention');
    expect(fill(rigWith(convention('same-number')), { by: 'art-net' })).toEqual([
      '1 art-net - 1',
      '2 art-net - 2',
      '3 art-net - 3',
    ]);
    expect(fill(rigWith(convention('plus-one')), { by: 'art-net', numbers: 'both' })).toEqual([
      '1 art-net 1 0',
      '2 art-net 2 1',
      '3 art-net 3 2',
    ]);
  });

  it('[NW31] leaves what stands, and takes the Port-Address of the sACN number that stands', () => {
    const some = [
      ...setCard('delivery', '1', { by: 'cable' }),
      ...setCard('delivery', '2', { by: 'art-net', sacn: 102 }),
      ...setCard('delivery', '3', { sacn: 7, portAddress: 9 }),
    ];
    expect(fill(rigWith(convention('plus-one'), some), { numbers: 'both' })).toEqual([
      '1 cable - -',
      '2 art-net 102 101',
      '3 sacn 7 9',
    ]);
  });

  it('[NW31] is refused where the convention gives none, and where nothing is to be said', () => {
    const far = { universes: [40_000 as Universe], by: 'art-net' } as const;
    expect(fill(rigWith(convention('same-number')), far)).toBe('no-port-address');
    const full = planned(
      rigWith(),
      unwrap(fillDeliveries(rigWith(), { universes: all, by: 'sacn', numbers: 'needed' })),
    );
    expect(fill(full, {})).toBe('changes-nothing');
    expect(fill(rigWith(), { universes: [] })).toBe('changes-nothing');
  });

  it('[NW31] leaves no universe in use without a way, in random networks', () => {
    for (let seed = 1; seed <= 40; seed++) {
      const rng = seededRng(seed);
      const cards = Array.from({ length: 60 }, () => randomCardEdit(rng, ['delivery', 'port', 'node']));
      const rig = applyEdits(randomRig(seed, { fixtures: 12, universes: 5 }), [...cards, ...convention('plus-one')]);
      const universes = unsaidUniverses(rig, universesInUse(rig));
      const plan = fillDeliveries(rig, { universes, by: 'sacn', numbers: 'needed' });
      // A cell that holds what it cannot mean stays as somebody wrote it: it is said, not overwritten.
      const odd = plantOf(rig.cards).unreadable.some(({ card }) => card === 'delivery');
      if (!plan.ok) expect(universes.length === 0 || odd, `seed ${seed}`).toBe(true);
      else if (!odd) expect(unsaidUniverses(planned(rig, plan.value), universesInUse(rig)), `seed ${seed}`).toEqual([]);
    }
  });
});

const unwrap = (plan: ReturnType<typeof listenPlan>): Plan => {
  if (!plan.ok) throw new Error(plan.error.code);
  return plan.value;
};

describe('listening', () => {
  const sent = [
    ...setCard('delivery', '1', { by: 'sacn', sacn: 11 }),
    ...setCard('delivery', '2', { by: 'art-net', portAddress: 5 }),
    ...setCard('delivery', '3', { by: 'sacn', sacn: 13 }),
    ...setCard('delivery', '9', { by: 'cable' }),
  ];
  const beam = setCard('node', 'n', { name: 'Beam', ports: 3 });
  const ports = (rig: Rig) =>
    [...plantOf(rig.cards).ports.values()].map(({ key, by, number }) => `${key} ${by} ${number}`);

  it('[NW32] gives free ports in order what no port listens to yet', () => {
    const rig = rigWith(sent, beam, setCard('port', 'n.2', { by: 'sacn', number: 11 }));
    expect(ports(planned(rig, unwrap(listenPlan(rig, 'n', null))))).toEqual([
      'n.1 art-net 5',
      'n.2 sacn 11',
      'n.3 sacn 13',
    ]);
    expect(ports(planned(rig, unwrap(listenPlan(rig, 'n', 3 as Universe))))).toEqual(['n.1 sacn 13', 'n.2 sacn 11']);
  });

  it('[NW32] is refused without a free port, and without a universe that nobody hears', () => {
    const code = (rig: Rig, node: string) => {
      const plan = listenPlan(rig, node, null);
      return plan.ok ? 'ok' : plan.error.code;
    };
    expect(code(rigWith(sent), 'n')).toBe('no-free-port');
    expect(code(rigWith(sent, setCard('node', 'n', { name: 'Beam' })), 'n')).toBe('no-free-port');
    expect(code(rigWith(beam), 'n')).toBe('nothing-unheard');
    const rig = rigWith(sent, beam);
    expect(code(planned(rig, unwrap(listenPlan(rig, 'n', null))), 'n')).toBe('no-free-port');
  });

  it('[NW31] [NW32] together leave no finding, when there are ports enough', () => {
    const first = rigWith(setCard('node', 'n', { name: 'Beam', ports: 4 }));
    const filled = planned(first, unwrap(fillDeliveries(first, { universes: all, by: 'sacn', numbers: 'needed' })));
    const heard = planned(filled, unwrap(listenPlan(filled, 'n', null)));
    expect(checkRig(heard)).toEqual(checkRig(rigOf(THREE)));
    expect(universeRoutes(heard, all).map(({ outlets }) => outlets.map(({ port }) => port.key))).toEqual([
      ['n.1'],
      ['n.2'],
      ['n.3'],
    ]);
  });
});

describe('removing a node', () => {
  it('[NW33] takes its ports, and leaves nothing that names it', () => {
    const others = [
      ...setCard('node', 'm', { name: 'Truss' }),
      ...setCard('port', 'm.1', { by: 'sacn', number: 2 }),
      ...setCard('run', 'b', { name: 'B', from: 'port m.1' }),
    ];
    const rig = rigWith(
      others,
      setCard('node', 'n', { name: 'Beam' }),
      setCard('port', 'n.1', { by: 'sacn', number: 1 }),
      setCard('run', 'a', { name: 'A', from: 'port n.1' }),
      setCard('delivery', '1', { by: 'sacn', sender: 'n' }),
    );
    expect(planned(rig, removeNodePlan(rig, 'n'))).toEqual(
      rigWith(others, setCard('run', 'a', { name: 'A' }), setCard('delivery', '1', { by: 'sacn' })),
    );
  });
});

describe('the ways of universes', () => {
  it('[NW30] are those of what is used or said, with ports and runs', () => {
    const rig = rigWith(
      setCard('delivery', '2', { by: 'sacn', sacn: 12 }),
      setCard('delivery', '9', { notes: 'spare' }),
      setCard('node', 'n', { name: 'Beam', ports: 4 }),
      setCard('port', 'n.1', { by: 'sacn', number: 12 }),
      setCard('port', 'n.3', { by: 'sacn', number: 12 }),
      setCard('run', 'lx 1', { name: 'LX 1', from: 'port n.3' }),
      setCard('run', 'floor', { name: 'Floor', from: 'cable 3' }),
    );
    const said = universeRoutes(rig, all).map(({ universe, use, delivery, outlets, runs }) =>
      [universe, use, delivery?.by ?? '-', outlets.map(({ port }) => port.index), runs.map(({ name }) => name)].join(
        ' | ',
      ),
    );
    expect(said).toEqual([
      '1 | used | - |  | ',
      '2 | used | sacn | 1,3 | LX 1',
      '3 | used | - |  | Floor',
      '9 | unused | - |  | ',
    ]);
  });
});
