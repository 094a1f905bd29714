import { type Result, refuse } from '#base/result.ts';
import { CARD_KEY_LIMIT, nameKey } from '../../model/card.ts';
import { moveCard, removeCard, setCard } from '../../model/card-edits.ts';
import type { Edit, Plan } from '../../model/edit.ts';
import { plantOf } from '../../model/plant.ts';
import type { Rig } from '../../model/rig.ts';
import { splittersOn, unitsByRun } from '../../network/runs/run-chain.ts';
import { cellEdits, planOf } from '../chosen.ts';
import type { PlanRefusal } from '../plan-refusal.ts';
import { offEdits, splitterEdits } from './chain-plans.ts';

/** Describes a run: one of a new name, or one that units are on already. [RN16] */
export function addRun(rig: Rig, name: string): Result<Plan, PlanRefusal> {
  const fresh = newKey(rig, name);
  return fresh.ok ? planOf(rig, 'set-run', setCard('run', fresh.value, { name: name.trim() })) : fresh;
}

/** Gives a run another name; what is on it goes along, described or not. [RN16] */
export function renameRun(rig: Rig, from: string, name: string): Result<Plan, PlanRefusal> {
  const old = nameKey(from);
  const to = name.trim();
  const fresh = nameKey(name) === old ? { ok: true as const, value: old } : newKey(rig, name);
  if (!fresh.ok) return fresh;
  // Units that somebody put on a run of that name already would come onto this one.
  if (fresh.value !== old && isInUse(rig, fresh.value)) return refuse({ code: 'name-taken', name: to });
  const card = plantOf(rig.cards).runs.has(old)
    ? moveCard(rig, 'run', old, { key: fresh.value, cells: { name: to } })
    : [];
  return planOf(rig, 'set-run', [...card, ...rewriteEdits(rig, old, to)]);
}

/** Takes a run away: its units and splitters are on no run then, and what began behind it stays as it is. [RN17] */
export function removeRun(rig: Rig, name: string): Result<Plan, PlanRefusal> {
  const key = nameKey(name);
  const units = [...(unitsByRun(rig.fixtures).get(key) ?? [])].sort(byId);
  const splitters = splittersOn(plantOf(rig.cards), key);
  return planOf(rig, 'set-run', [
    ...removeCard(rig, 'run', key),
    ...units.flatMap(offEdits),
    ...splitters.flatMap((splitter) => splitterEdits(rig, splitter, '')),
  ]);
}

export interface NewSplitter {
  /** Made by whoever asks. */
  readonly id: string;
  readonly name: string;
  /** The run it goes to the end of; empty: none. */
  readonly run: string;
  readonly outputs: number;
}

/** Makes a splitter. [RN15] */
export function addSplitter(rig: Rig, { id, name, run, outputs }: NewSplitter): Result<Plan, PlanRefusal> {
  if (name.trim() === '') return refuse({ code: 'no-name' });
  if (!Number.isInteger(outputs) || outputs < 1 || outputs > 64) return refuse({ code: 'bad-number', value: outputs });
  const nowhere = { id, name: name.trim(), run: '', along: 0, cable: null, outputs, notes: '' };
  const made = setCard('splitter', id, { name: name.trim(), outputs });
  return planOf(rig, 'set-run', [...made, ...splitterEdits(rig, nowhere, run)]);
}

/** Takes a splitter away; runs that begin at it are found to begin at what is gone. [RN17] */
export const removeSplitter = (rig: Rig, id: string): Result<Plan, PlanRefusal> =>
  planOf(rig, 'set-run', removeCard(rig, 'splitter', id));

function newKey(rig: Rig, name: string): Result<string, PlanRefusal> {
  const key = nameKey(name);
  if (key === '' || key.length > CARD_KEY_LIMIT) return refuse({ code: 'no-name' });
  return plantOf(rig.cards).runs.has(key)
    ? refuse({ code: 'name-taken', name: name.trim() })
    : { ok: true, value: key };
}

const isInUse = (rig: Rig, key: string) =>
  unitsByRun(rig.fixtures).has(key) || splittersOn(plantOf(rig.cards), key).length > 0;

function rewriteEdits(rig: Rig, key: string, name: string): readonly Edit[] {
  const units = [...(unitsByRun(rig.fixtures).get(key) ?? [])].sort(byId);
  return [
    ...units.flatMap((fixture) => cellEdits(fixture, 'run', name)),
    ...splittersOn(plantOf(rig.cards), key).flatMap(({ id, run }) =>
      run === name ? [] : setCard('splitter', id, { run: name }),
    ),
  ];
}

const byId = (a: { readonly id: string }, b: { readonly id: string }) => (a.id < b.id ? -1 : 1);
