import { claimsOf, footprintAt } from '../address/claim.ts';
import { sameAddresses, type Unit } from '../address/unit.ts';
import { type Universe, universeOf } from '../model/address.ts';
import { nameKey } from '../model/card.ts';
import type { Finding } from '../model/finding.ts';
import type { Fixture } from '../model/fixture.ts';
import type { FixtureId } from '../model/ids.ts';
import { namedSource } from '../model/named-source.ts';
import { type Plant, type Run, runName, type Splitter } from '../model/plant.ts';
import type { PlantTrouble } from '../model/plant-trouble.ts';
import { carriedByRun } from '../network/carried.ts';
import { type MeasuredRun, MOST_LOADS, measuredRun, reachOf } from '../network/runs/measured-run.ts';
import { chainOf, splittersOn } from '../network/runs/run-chain.ts';
import type { Group, GroupRule } from './grouped-checker.ts';
import { makeFinding } from './make-finding.ts';

/** What is found of the units of each run, once anybody has described a run or a splitter. [RN4]–[RN7], [RN10] */
export const RUN_UNITS: GroupRule = {
  kinds: ['setup', 'node', 'port', 'delivery', 'run', 'splitter'],
  isOn: ({ runs, splitters }) => runs.size + splitters.length > 0,
  keyOf: (fixture) => nameKey(fixture.run),
  matters: ({ unit, before, beforeMode, after }) =>
    before === undefined ||
    after === undefined ||
    before === after ||
    unit.modeKey !== beforeMode ||
    !sameAddresses(before, after) ||
    OF_THE_LINE.some((field) => before[field] !== after[field]),
  keys: ({ runs }) => runs.keys(),
  findings,
};

const OF_THE_LINE = ['run', 'along', 'cable', 'position', 'unit'] as const satisfies readonly (keyof Fixture)[];

function findings({ key, units, plant }: Group): readonly Finding[] {
  const run = plant.runs.get(key);
  if (run !== undefined) return [...lineFindings(plant, run, units), ...dataFindings(plant, run, units)];
  if (units.size === 0) return [];
  return [makeFinding({ rule: 'run-undescribed', line: asWritten(units).trim() }, idsOf(units))];
}

const idsOf = (units: Iterable<Unit>) => [...units].map(({ fixture }) => fixture.id);

/** What asks for the order of what is on the line. A line well within its limits, with its end, needs not be put in order. */
function lineFindings(plant: Plant, run: Run, units: ReadonlySet<Unit>): readonly Finding[] {
  const splitters = splittersOn(plant, run.key);
  const reach = reachOf(plant, run).metres;
  const isShort = mostMetres(run, units, splitters) <= reach;
  if (run.end === 'terminated' && isShort && units.size + splitters.length <= MOST_LOADS) return [];
  const fixtures = [...units].map(({ fixture }) => fixture);
  const line = measuredRun(chainOf(fixtures, splitters), run.lead);
  return [...loadFindings(run, line), ...lengthFindings(plant, run, line), ...endFindings(run, line)];
}

/** No less than the metres of the line, with a millimetre to spare for each stretch. */
function mostMetres(run: Run, units: ReadonlySet<Unit>, splitters: readonly Splitter[]): number {
  let metres = (run.lead ?? 0) + 0.001;
  for (const { fixture } of units) metres += (fixture.cable ?? 0) + 0.001;
  for (const { cable } of splitters) metres += (cable ?? 0) + 0.001;
  return metres;
}

/** The name as the first of its spellings has it: the order of units plays no part. */
const asWritten = (units: ReadonlySet<Unit>) => [...units].map(({ fixture }) => fixture.run).sort()[0] ?? '';

function loadFindings(run: Run, { stations, loads }: MeasuredRun): Finding[] {
  if (loads <= MOST_LOADS) return [];
  const beyond = unitsIn(stations.slice(MOST_LOADS));
  return [makeFinding({ rule: 'run-overloaded', line: runName(run), loads }, beyond)];
}

function lengthFindings(plant: Plant, run: Run, { stations, metres, unknown }: MeasuredRun): Finding[] {
  const { metres: reach, by } = reachOf(plant, run);
  if (metres <= reach) return [];
  const beyond = unitsIn(stations.filter((station) => station.metres > reach));
  return [makeFinding({ rule: 'run-too-long', line: runName(run), metres, unknown, reach, by }, beyond)];
}

function endFindings(run: Run, { stations }: MeasuredRun): Finding[] {
  const last = unitsIn(stations).at(-1);
  if (last === undefined || run.end === 'terminated') return [];
  return [makeFinding({ rule: run.end === 'open' ? 'run-open' : 'run-end-unsaid', line: runName(run) }, [last])];
}

const unitsIn = (stations: MeasuredRun['stations']): FixtureId[] =>
  stations.flatMap(({ link }) => (link.kind === 'unit' ? [link.fixture.id] : []));

/** A unit with several breaks is taken for served when a universe of any of them is there. [RN6] */
function dataFindings(plant: Plant, run: Run, units: ReadonlySet<Unit>): readonly Finding[] {
  const carried = carriedByRun(plant, run);
  if (carried === null) return mixedFindings(run, units);
  if (carried.length === 0) {
    const silent = units.size === 0 ? [] : [makeFinding(silence(plant, run), [])];
    return [...silent, ...mixedFindings(run, units)];
  }
  const others = [...units].filter((unit) => !hasSlotsIn(unit, carried) && hasSlots(unit));
  if (others.length === 0) return NOTHING;
  const trouble = {
    rule: 'run-other-universe',
    line: runName(run),
    carried,
    universes: allOf(askedOf(others)),
  } as const;
  return [makeFinding(trouble, idsOf(others))];
}

const NOTHING: readonly Finding[] = Object.freeze([]);

function mixedFindings(run: Run, units: ReadonlySet<Unit>): readonly Finding[] {
  const asked = askedOf(units);
  if (shareOne(asked)) return NOTHING;
  const ids = asked.map(({ id }) => id);
  return [makeFinding({ rule: 'run-mixed', line: runName(run), universes: allOf(asked) }, ids)];
}

function hasSlotsIn({ fixture: { addresses }, mode }: Unit, universes: readonly Universe[]): boolean {
  return addresses.some(
    (start, part) => start !== null && footprintAt(mode, part) > 0 && universes.includes(universeOf(start)),
  );
}

const hasSlots = ({ fixture: { addresses }, mode }: Unit) =>
  addresses.some((start, part) => start !== null && footprintAt(mode, part) > 0);

/** The universes in which each unit has slots, of those that have any. */
const askedOf = (units: Iterable<Unit>): readonly Asked[] =>
  [...units].flatMap(({ fixture, mode }) => {
    const universes = new Set(claimsOf(fixture, mode).map(({ universe }) => universe));
    return universes.size === 0 ? [] : [{ id: fixture.id, universes }];
  });

interface Asked {
  readonly id: FixtureId;
  readonly universes: ReadonlySet<Universe>;
}

const silence = (plant: Plant, run: Run): PlantTrouble => ({
  rule: 'run-silent',
  line: runName(run),
  from: namedSource(plant, run.from),
});

/** Whether there is a universe in which all of them have slots. */
function shareOne(asked: readonly Asked[]): boolean {
  const [first] = asked;
  return (
    first === undefined || [...first.universes].some((each) => asked.every(({ universes }) => universes.has(each)))
  );
}

const allOf = (asked: readonly Asked[]): Universe[] =>
  [...new Set(asked.flatMap(({ universes }) => [...universes]))].sort((a, b) => a - b);
