import { ok, type Result, refuse } from '#base/result.ts';
import { getRow, rowsOf } from '#base/table.ts';
import { type CardKind, cardId, nameKey } from '../model/card.ts';
import { moveCard, removeCard, setCard } from '../model/card-edits.ts';
import type { Edit, Plan } from '../model/edit.ts';
import type { FixtureId } from '../model/ids.ts';
import { plantOf } from '../model/plant.ts';
import type { Rig } from '../model/rig.ts';
import { cellEdits, chosen, planOf } from '../patch/chosen.ts';
import type { PlanRefusal } from '../patch/plan-refusal.ts';

/** Puts the chosen units on a circuit; one that no card describes yet is described by its name. An empty name takes them off theirs. [SF1] */
export function feedPlan(rig: Rig, ids: readonly FixtureId[], circuit: string): Result<Plan, PlanRefusal> {
  const fixtures = chosen(rig, ids);
  if (!fixtures.ok) return fixtures;
  const name = circuit.trim();
  const key = nameKey(name);
  const known = plantOf(rig.cards).circuits.get(key);
  const described = key === '' || known !== undefined ? [] : setCard('circuit', key, { name });
  const wanted = key === '' ? null : (known?.name ?? name);
  const moved = fixtures.value
    .filter((fixture) => nameKey(fixture.circuit) !== key)
    .flatMap((fixture) => cellEdits(fixture, 'circuit', wanted));
  return planOf(rig, 'set-supply', [...described, ...moved]);
}

/** What is known by its name and can be added, renamed and taken away. */
export type NamedKind = Extract<CardKind, 'circuit' | 'supply' | 'limit'>;

const FIELD = { circuit: 'name', supply: 'name', limit: 'position' } as const;
const PLAN = { circuit: 'set-supply', supply: 'set-supply', limit: 'set-limit' } as const;

/** Describes one more, by a name that none of its kind has, with what is known of it already. [SF2] */
export function addNamed(
  rig: Rig,
  kind: NamedKind,
  name: string,
  cells: Readonly<Record<string, string | number>> = {},
): Result<Plan, PlanRefusal> {
  const free = freeKey(rig, kind, name);
  if (!free.ok) return free;
  return ok({ name: PLAN[kind], edits: setCard(kind, free.value, { ...cells, [FIELD[kind]]: name.trim() }) });
}

/** Gives a circuit or supply another name, in its card and wherever it is named: in the units on it, in the circuits of it. [SF3] */
export function renameNamed(
  rig: Rig,
  kind: Exclude<NamedKind, 'limit'>,
  key: string,
  name: string,
): Result<Plan, PlanRefusal> {
  const free = nameKey(name) === key ? ok(key) : freeKey(rig, kind, name);
  if (!free.ok) return free;
  const cells = { name: name.trim() };
  const card = moveCard(rig, kind, key, { key: free.value, cells });
  return planOf(rig, PLAN[kind], [
    ...card,
    ...(kind === 'circuit' ? unitsNaming : circuitsNaming)(rig, key, cells.name),
  ]);
}

/** Takes a card away. What names it goes on doing so. [SF4] */
export const removeNamed = (rig: Rig, kind: NamedKind, key: string): Result<Plan, PlanRefusal> =>
  planOf(rig, PLAN[kind], removeCard(rig, kind, key));

function freeKey(rig: Rig, kind: NamedKind, name: string): Result<string, PlanRefusal> {
  const key = nameKey(name);
  if (key === '') return refuse({ code: 'no-name' });
  const isTaken = getRow(rig.cards, cardId(kind, key)) !== undefined;
  return isTaken ? refuse({ code: 'name-taken', name: name.trim() }) : ok(key);
}

const unitsNaming = (rig: Rig, key: string, name: string): readonly Edit[] =>
  [...rowsOf(rig.fixtures)]
    .filter((fixture) => nameKey(fixture.circuit) === key)
    .flatMap((fixture) => cellEdits(fixture, 'circuit', name));

const circuitsNaming = (rig: Rig, key: string, name: string): readonly Edit[] =>
  [...plantOf(rig.cards).circuits.values()]
    .filter(({ supply }) => nameKey(supply) === key)
    .flatMap((circuit) => setCard('circuit', circuit.key, { supply: name }));
