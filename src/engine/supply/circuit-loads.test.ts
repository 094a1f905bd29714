import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { rowsOf } from '#base/table.ts';
import { randomStated, statedRig } from '#tests/support/stated-rig.ts';
import { applyEdits } from '../model/apply-edits.ts';
import { SETUP_KEY } from '../model/card.ts';
import { setCard } from '../model/card-edits.ts';
import { modeOf } from '../model/find-mode.ts';
import type { Fixture } from '../model/fixture.ts';
import { plantOf } from '../model/plant.ts';
import type { Rig } from '../model/rig.ts';
import { circuitLoads } from './circuit-loads.ts';
import { CONTINUOUS_SHARE, FIRST_RULES, type LoadRules, rulesOf } from './load-rules.ts';
import { positionLoads } from './position-loads.ts';

const EIGHTY: LoadRules = { volts: 120, share: CONTINUOUS_SHARE };

/** A rig at whose venue these rules hold; the first ones are those of nobody. */
const under = (rules: LoadRules, rig: Rig) =>
  rules === FIRST_RULES
    ? rig
    : applyEdits(rig, setCard('setup', SETUP_KEY, { volts: rules.volts, share: rules.share }));

const ids = (fixtures: Iterable<Fixture>) => [...fixtures].map(({ id }) => id).sort();
const physicalOf = (rig: Rig, fixture: Fixture) => modeOf(rig, fixture)?.pin?.type.physical;
const isFigure = (value: number | null | undefined): value is number =>
  typeof value === 'number' && value > 0 && value < 1e9;

/** What a unit draws, looked up by itself. */
function drawOf(rig: Rig, fixture: Fixture, volts: number) {
  const physical = physicalOf(rig, fixture);
  const watts = isFigure(physical?.power) ? physical.power : 0;
  const factor = isFigure(physical?.powerFactor) && physical.powerFactor <= 1 ? physical.powerFactor : 1;
  return { watts, amps: watts / volts / factor };
}

const sum = (numbers: readonly number[]) => numbers.reduce((a, b) => a + b, 0);

describe('loads of circuits', () => {
  it('[SU6] has every unit in one circuit, and every figure is of the units whose types state it', () => {
    const rng = seededRng(23);
    for (let round = 0; round < 200; round++) {
      const stated = randomStated(rng, rng.int(25));
      const rig = statedRig(stated.units, stated.types);
      const rules = rng.pick([FIRST_RULES, EIGHTY]);
      const loads = circuitLoads(under(rules, rig));
      expect(ids(loads.flatMap(({ units }) => units))).toEqual(ids(rowsOf(rig.fixtures)));
      expect(new Set(loads.map(({ circuit }) => circuit.toLowerCase())).size).toBe(loads.length);
      for (const load of loads) {
        const draws = load.units.map((unit) => drawOf(rig, unit, rules.volts));
        expect(load.watts).toBeCloseTo(sum(draws.map(({ watts }) => watts)), 6);
        expect(load.amps).toBeCloseTo(sum(draws.map(({ amps }) => amps)), 6);
        expect(load.asks * (rules.share ?? 1)).toBeCloseTo(load.amps, 6);
        expect(ids(load.unknown)).toEqual(ids(load.units.filter((unit) => !isFigure(physicalOf(rig, unit)?.power))));
        // No unit is both out of the figure and in it.
        expect(load.factorless.filter((unit) => load.unknown.includes(unit))).toEqual([]);
        expect(load.units.length - load.unknown.length).toBe(draws.filter(({ watts }) => watts > 0).length);
      }
    }
  });

  it('[SU6] [SU7] the order of rows plays no part', () => {
    const rng = seededRng(29);
    for (let round = 0; round < 50; round++) {
      const { units, types } = randomStated(rng, 12);
      const figures = (rig: Rig) => [
        circuitLoads(under(EIGHTY, rig)).map(({ circuit, units: of, watts, amps, unknown, limits }) => [
          circuit,
          of.length,
          watts.toFixed(6),
          amps.toFixed(6),
          unknown.length,
          limits.map(({ type, units: alike, breaker, most }) => [type, alike.length, breaker, most]),
        ]),
        positionLoads(rig).map(({ units: of, kilograms, unknown }) => [
          of.length,
          kilograms.toFixed(6),
          unknown.length,
        ]),
      ];
      const turned = figures(statedRig([...units].reverse(), types));
      const sortedLimits = JSON.stringify(turned).toLowerCase();
      expect(JSON.stringify(figures(statedRig(units, types))).toLowerCase()).toBe(sortedLimits);
    }
  });

  it('[SU6] circuits in natural order, units without one last; a factor nobody states is 1 and said', () => {
    const rig = statedRig(
      [
        { type: 'Par', circuit: 'C10', unit: '1' },
        { type: 'Par', circuit: 'C2', unit: '2' },
        { type: 'Wash', circuit: 'c2', unit: '3' },
        { type: 'Old', circuit: 'C2', unit: '4' },
        { type: 'Ghost', circuit: '', unit: '5' },
      ],
      {
        Par: {
          power: 1000,
          powerFactor: 1,
          voltage: { low: 230, high: 230 },
          perBreaker: [{ breaker: 'B16', most: '3' }],
        },
        Wash: { power: 460, powerFactor: null },
        Old: { power: null, weight: 9 },
      },
    );
    const said = circuitLoads(rig).map(
      ({ circuit, watts, amps, unknown, factorless }) =>
        `${circuit || '-'} ${watts} W ${amps.toFixed(2)} A, not known ${unknown.length}, no factor ${factorless.length}`,
    );
    expect(said).toEqual([
      'C2 1460 W 6.35 A, not known 1, no factor 1',
      'C10 1000 W 4.35 A, not known 0, no factor 0',
      '- 0 W 0.00 A, not known 1, no factor 0',
    ]);
    const [c2] = circuitLoads(rig);
    expect(c2?.limits).toEqual([{ type: 'Par', units: c2?.units.slice(0, 1), breaker: 'B16', most: '3' }]);
    expect(c2?.unsuited).toEqual([]);
    expect(ids(circuitLoads(under(EIGHTY, rig))[0]?.unsuited ?? [])).toEqual(['f2']);
  });
});

describe('the rules of a venue', () => {
  it('[SU9] are those of its set-up; until somebody says a voltage, the one that is taken is nobody’s', () => {
    const rig = statedRig([], {});
    const of = (cells: Parameters<typeof setCard<'setup'>>[2]) =>
      rulesOf(plantOf(applyEdits(rig, setCard('setup', SETUP_KEY, cells)).cards));
    expect(rulesOf(plantOf(rig.cards))).toEqual({ volts: 230, share: null, name: '', voltage: 'taken' });
    expect(of({ rules: 'House rules', share: 0.8 })).toEqual({
      volts: 230,
      share: 0.8,
      name: 'House rules',
      voltage: 'taken',
    });
    expect(of({ volts: 120, share: 7 })).toEqual({ volts: 120, share: null, name: '', voltage: 'said' });
  });

  it('[SU9] the voltage of a circuit is that of its supply, and √3 as much between two lines', () => {
    const rig = applyEdits(statedRig([{ type: 'Par', circuit: 'C1' }], { Par: { power: 2080, powerFactor: 1 } }), [
      ...setCard('supply', 'mains', { name: 'Mains', volts: 120, phases: '3' }),
      ...setCard('circuit', 'c1', { name: 'C1', supply: 'mains', phase: '1-2' }),
    ]);
    const [c1] = circuitLoads(rig);
    // 120/208 V: facts of a published table, 208 V between legs.
    expect(c1?.volts.toFixed(1)).toBe('207.8');
    expect(c1?.amps.toFixed(2)).toBe('10.01');
    const without = applyEdits(rig, setCard('circuit', 'c1', { supply: 'gone' }));
    expect(circuitLoads(without)[0]?.volts).toBe(230);
  });
});

describe('weights of positions', () => {
  it('[SU7] has every unit at one position, and sums the weights that types state', () => {
    const rng = seededRng(31);
    for (let round = 0; round < 200; round++) {
      const stated = randomStated(rng, rng.int(25));
      const rig = statedRig(stated.units, stated.types);
      const loads = positionLoads(rig);
      expect(ids(loads.flatMap(({ units }) => units.map(({ fixture }) => fixture)))).toEqual(ids(rowsOf(rig.fixtures)));
      for (const { units, kilograms, unknown } of loads) {
        const weights = units.map(({ fixture }) => physicalOf(rig, fixture)?.weight).filter(isFigure);
        expect(kilograms).toBeCloseTo(sum(weights), 6);
        expect(unknown.length).toBe(units.length - weights.length);
        expect(units.filter(({ kilograms: own }) => own === null).length).toBe(unknown.length);
      }
    }
  });
});
