import { type Result, refuse } from '#base/result.ts';
import { nameKey } from '../../model/card.ts';
import { setCard } from '../../model/card-edits.ts';
import type { Edit, Plan } from '../../model/edit.ts';
import type { Fixture } from '../../model/fixture.ts';
import type { FixtureId } from '../../model/ids.ts';
import { plantOf, runName, type Splitter } from '../../model/plant.ts';
import type { Rig } from '../../model/rig.ts';
import { alongOf, type ChainLink, compareUnits, runChain } from '../../network/runs/run-chain.ts';
import { cellEdits, chosen, planOf } from '../chosen.ts';
import type { PlanRefusal } from '../plan-refusal.ts';
import { placeAlong } from './place-along.ts';

export interface PutRequest {
  /** The name of the run, described or not. */
  readonly run: string;
  readonly fixtures: readonly FixtureId[];
  /** `given`: in the order of `fixtures`; `place`: by position and number. */
  readonly order: 'given' | 'place';
  /** The id of the unit or splitter they come behind; undefined: at the end. */
  readonly after?: string | undefined;
}

/** Puts units on a run, together and in the order asked for. What comes from another run leaves its metres of cable there. [RN12] */
export function putOnRun(rig: Rig, { run, fixtures: ids, order, after }: PutRequest): Result<Plan, PlanRefusal> {
  const fixtures = chosen(rig, ids);
  if (!fixtures.ok) return fixtures;
  const key = nameKey(run);
  if (key === '') return refuse({ code: 'no-name' });
  const units = order === 'given' ? fixtures.value : [...fixtures.value].sort(compareUnits);
  const links = units.map((fixture): ChainLink => ({ kind: 'unit', id: fixture.id, fixture }));
  const moved = new Set<string>(ids);
  const chain = runChain(rig, key);
  const stays = chain.filter(({ id }) => !moved.has(id));
  const at = after === undefined ? stays.length : placeBehind(chain, after, moved);
  const name = nameOf(rig, run);
  const arrivals = units.flatMap((fixture) => (nameKey(fixture.run) === key ? [] : arrivalEdits(fixture, name)));
  return planOf(rig, 'set-run', [...arrivals, ...placeEdits(stays, at, links)]);
}

/** How many of those that stay are up to and with `id`. */
function placeBehind(chain: readonly ChainLink[], id: string, moved: ReadonlySet<string>): number {
  const upTo = chain.slice(0, chain.findIndex((link) => link.id === id) + 1);
  return upTo.filter((link) => !moved.has(link.id)).length;
}

function nameOf(rig: Rig, run: string): string {
  const known = plantOf(rig.cards).runs.get(nameKey(run));
  return known === undefined ? run.trim() : runName(known);
}

const arrivalEdits = (fixture: Fixture, run: string): readonly Edit[] => [
  ...cellEdits(fixture, 'run', run),
  ...(nameKey(fixture.run) === '' ? [] : cellEdits(fixture, 'cable', null)),
];

function placeEdits(stays: readonly ChainLink[], at: number, links: readonly ChainLink[]): readonly Edit[] {
  const placed = stays.map((link) => ({ id: link.id, along: alongOf(link) }));
  const all = new Map([...stays, ...links].map((link) => [link.id, link] as const));
  const ids = links.map(({ id }) => id);
  return placeAlong(placed, at, ids).flatMap(({ id, along }): readonly Edit[] => {
    const link = all.get(id);
    if (link?.kind === 'unit') return cellEdits(link.fixture, 'along', along);
    return link === undefined || link.splitter.along === along ? [] : setCard('splitter', id, { along });
  });
}

/** Moves a unit or a splitter a place towards the beginning (-1) or the end (1) of its run. [RN13] */
export function moveOnRun(rig: Rig, { run, id, step }: MoveRequest): Result<Plan, PlanRefusal> {
  const chain = runChain(rig, nameKey(run));
  const from = chain.findIndex((link) => link.id === id);
  const link = chain[from];
  if (link === undefined) return refuse({ code: 'not-on-run' });
  const to = from + step;
  if (to < 0 || to >= chain.length) return refuse({ code: 'changes-nothing' });
  const stays = chain.filter((each) => each !== link);
  return planOf(rig, 'set-run', placeEdits(stays, to, [link]));
}

export interface MoveRequest {
  readonly run: string;
  readonly id: string;
  readonly step: 1 | -1;
}

/** Takes units off their runs, with their place and their metres of cable, which are of that run. [RN14] */
export function takeOffRun(rig: Rig, ids: readonly FixtureId[]): Result<Plan, PlanRefusal> {
  const fixtures = chosen(rig, ids);
  return fixtures.ok ? planOf(rig, 'set-run', fixtures.value.flatMap(offEdits)) : fixtures;
}

export const offEdits = (fixture: Fixture): readonly Edit[] => [
  ...cellEdits(fixture, 'run', null),
  ...(fixture.along === 0 ? [] : cellEdits(fixture, 'along', null)),
  ...cellEdits(fixture, 'cable', null),
];

/** Puts a splitter at the end of a run; an empty name takes it off every run. [RN15] */
export function putSplitter(rig: Rig, id: string, run: string): Result<Plan, PlanRefusal> {
  const splitter = plantOf(rig.cards).splitters.find((each) => each.id === id);
  if (splitter === undefined) return refuse({ code: 'not-on-run' });
  return planOf(rig, 'set-run', splitterEdits(rig, splitter, run));
}

/** The edits that put a splitter, there already or not, at the end of a run. */
export function splitterEdits(rig: Rig, splitter: Splitter, run: string): readonly Edit[] {
  const { id } = splitter;
  const key = nameKey(run);
  if (key === nameKey(splitter.run)) return [];
  const off = setCard('splitter', id, { run: null, along: null, cable: null });
  if (key === '') return off;
  const stays = runChain(rig, key);
  const link: ChainLink = { kind: 'splitter', id, splitter: { ...splitter, along: Number.NaN } };
  return [...off, ...setCard('splitter', id, { run: nameOf(rig, run) }), ...placeEdits(stays, stays.length, [link])];
}
