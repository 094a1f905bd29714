import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { getRow, rowsOf, tableOf } from '#base/table.ts';
import { describedRun, lineRig } from '#tests/support/line-rig.ts';
import { randomRig } from '#tests/support/random-rig.ts';
import { applyEdits } from '../../model/apply-edits.ts';
import { setCard } from '../../model/card-edits.ts';
import { plantOf } from '../../model/plant.ts';
import type { Rig } from '../../model/rig.ts';
import { measuredRun, reachOf } from './measured-run.ts';
import { runChain } from './run-chain.ts';
import { unitPath } from './unit-path.ts';

const idsOn = (rig: Rig, run: string) => runChain(rig, run).map(({ id }) => id);

describe('the chain of a run', () => {
  it('[RN1] goes by places, and as units hang where nobody has said any', () => {
    const rig = lineRig([
      { id: 'a', run: 'FOH', along: 20, position: 'LX 1', unit: '1' },
      { id: 'b', run: ' foh ', along: 10, position: 'LX 1', unit: '2' },
      { id: 'c', run: 'FOH', position: 'LX 2', unit: '1' },
      { id: 'd', run: 'FOH', position: 'LX 1', unit: '10' },
      { id: 'e', run: 'FOH', position: 'lx  1', unit: '4A' },
      { id: 'f', run: 'Other' },
    ]);
    const split = setCard('splitter', 's', { name: 'Split', run: 'foh', along: 15, outputs: 4 });
    expect(idsOn(applyEdits(rig, split), 'foh')).toEqual(['e', 'd', 'c', 'b', 's', 'a']);
  });

  it('[RN1] does not depend on the order of rows', () => {
    for (let seed = 1; seed <= 50; seed++) {
      const rig = randomRig(seed, { fixtures: 40, universes: 2 });
      const other = { ...rig, fixtures: tableOf([...rowsOf(rig.fixtures)].reverse()) };
      for (const run of ['front', 'back']) expect(idsOn(other, run)).toEqual(idsOn(rig, run));
    }
  });
});

describe('the length of a run', () => {
  const metres = (lead: number | null, ...cables: readonly (number | null)[]) => {
    const rig = lineRig(cables.map((cable, at) => ({ id: `u${at}`, run: 'A', along: at + 1, cable })));
    const { stations, ...whole } = measuredRun(runChain(rig, 'a'), lead);
    return { each: stations.map((station) => station.metres), ...whole };
  };

  it('[RN2] adds up lead and cables, and says how many stretches nobody knows', () => {
    expect(metres(20, null, 2.5, 3)).toEqual({ each: [20, 22.5, 25.5], metres: 25.5, unknown: 0, loads: 3 });
    expect(metres(null, 7, 0.1, 0.2)).toEqual({ each: [7, 7.1, 7.3], metres: 7.3, unknown: 0, loads: 3 });
    expect(metres(20, 7)).toEqual({ each: [20], metres: 20, unknown: 0, loads: 1 });
    expect(metres(null, null, 4, null)).toEqual({ each: [0, 4, 4], metres: 4, unknown: 2, loads: 3 });
  });

  it('[RN2] is the sum that anybody would reckon, for random runs', () => {
    const rng = seededRng(5);
    for (let round = 0; round < 200; round++) {
      const cables = Array.from({ length: 1 + rng.int(40) }, () => (rng.int(5) === 0 ? null : rng.int(4000) / 100));
      const known = cables.map((cable) => Math.round((cable ?? 0) * 1000));
      const lead = rng.int(2) === 0 ? null : 12;
      if (lead !== null) known[0] = 12_000;
      const { metres: sum, unknown } = metres(lead, ...cables.map((cable) => cable || null));
      expect(sum).toBeCloseTo(known.reduce((a, b) => a + b, 0) / 1000, 6);
      expect(unknown).toBe(cables.filter((cable, at) => !cable && (at > 0 || lead === null)).length);
    }
  });

  it('[RN3] may be what the run says, else what the rig says, else 300 m', () => {
    const plant = (...edits: Parameters<typeof applyEdits>[1]) => plantOf(applyEdits(lineRig([]), edits).cards);
    const run = (reach: number | null) => ({ reach });
    expect(reachOf(plant(), run(null))).toEqual({ metres: 300, by: 'practice' });
    expect(reachOf(plant(...setCard('setup', 'rig', { reach: 120 })), run(null))).toEqual({ metres: 120, by: 'rig' });
    expect(reachOf(plant(...setCard('setup', 'rig', { reach: 120 })), run(50))).toEqual({ metres: 50, by: 'run' });
  });
});

describe('the way to a unit', () => {
  const rig = applyEdits(
    lineRig([
      { id: 'u1', run: 'Truss', along: 1, cable: null, address: 513 },
      { id: 'u2', run: 'Truss', along: 2, cable: 4, address: 529 },
      { id: 'v', run: 'Feed', along: 1 },
    ]),
    [
      ...setCard('node', 'n', { name: 'Dock', ports: 4 }),
      ...setCard('port', 'n.2', { by: 'sacn', number: 12 }),
      ...setCard('delivery', '2', { by: 'sacn', sacn: 12 }),
      ...describedRun('Feed', { from: 'port n.2', lead: 30 }),
      ...describedRun('Truss', { from: 'splitter s.3', lead: 20 }),
      ...setCard('splitter', 's', { name: 'Split', run: 'Feed', along: 2, cable: 5, outputs: 8 }),
    ],
  );
  const pathOf = (id: string, of: Rig = rig) => {
    const fixture = getRow(of.fixtures, id);
    if (fixture === undefined) throw new Error(id);
    return unitPath(of, fixture);
  };
  const inShort = (path: ReturnType<typeof pathOf>) =>
    path.runs.map(({ name, at, of, from }) => [name, at?.place, of, at?.metres, from]);

  it('[RN11] goes over splitters to the port, with the place and the metres on each line', () => {
    const path = pathOf('u2');
    expect(inShort(path)).toEqual([
      ['Truss', 2, 2, 24, { kind: 'splitter', splitter: 'Split', output: 3 }],
      ['Feed', 2, 2, 35, { kind: 'port', node: 'Dock', index: 2 }],
    ]);
    expect(path.universes.map(({ universe, delivery }) => [universe, delivery?.sacn])).toEqual([[2, 12]]);
    expect(path.port?.number).toBe(12);
  });

  it('[RN11] ends where a ring closes, at a run that nobody described, and is nothing on no run', () => {
    const ring = applyEdits(rig, describedRun('Feed', { from: 'splitter s.1' }));
    expect(pathOf('u2', ring).runs.map(({ name }) => name)).toEqual(['Truss', 'Feed']);
    expect(inShort(pathOf('x', lineRig([{ id: 'x', run: ' Wings ' }])))).toEqual([['Wings', 1, 1, 0, undefined]]);
    expect(pathOf('x', lineRig([{ id: 'x' }])).runs).toEqual([]);
  });
});
