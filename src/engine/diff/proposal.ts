import { getRow } from '#base/table.ts';
import { applyEdits } from '../model/apply-edits.ts';
import type { Edit } from '../model/edit.ts';
import type { Rig } from '../model/rig.ts';
import { partOfEdit } from './part-of-edit.ts';
import { isHappening } from './restore.ts';
import { type RigTask, tasksOf, type UnitTask } from './tasks.ts';

/**
 * The edits after which the record of a house has what the show has, for the tasks of its restore sheet with these keys and for nothing
 * else: exactly those are then on it no more. [RS6]
 */
export function proposalEdits(record: Rig, show: Rig, keys: ReadonlySet<string>): readonly Edit[] {
  const { units, rig } = tasksOf(record, show);
  return [
    ...units.filter((task) => keys.has(wayBack(task))),
    ...rig.filter((task) => keys.has(task.key) && !isHappening(task)),
  ].flatMap(({ edits }) => edits);
}

/** The key of the task that undoes this one. */
function wayBack({ kind, key }: UnitTask): string {
  const unit = key.slice(0, -kind.length);
  return kind === 'hang' ? `${unit}take-down` : kind === 'take-down' ? `${unit}hang` : key;
}

/** What has become of a part of a proposal: the house may have changed since it was worked out. */
export type Fate =
  /** The house is there as it was. */
  | 'fits'
  /** The house says so already. */
  | 'so-already'
  /** Somebody has changed it to something else. */
  | 'changed-since'
  /** The unit is gone. */
  | 'gone';

export type ProposalLine =
  | { readonly at: 'unit'; readonly task: UnitTask; readonly fate: Fate }
  | { readonly at: 'rig'; readonly task: RigTask; readonly fate: Fate };

/** A proposal, worked out against `base`, as it meets the house rig as it is now. Each line can be taken or left by itself. [RS7] */
export function proposalLines(base: Rig, now: Rig, edits: readonly Edit[]): readonly ProposalLine[] {
  const wanted = applyEdits(base, edits);
  const { units, rig } = tasksOf(base, wanted);
  const fateOf = ({ edits: own }: UnitTask | RigTask): Fate => {
    if (own.some((edit) => edit.kind === 'set-cell' && getRow(now.fixtures, edit.fixture) === undefined)) return 'gone';
    const open = own.filter((edit) => partOfEdit(now, edit) !== partOfEdit(wanted, edit));
    if (open.length === 0) return 'so-already';
    return open.every((edit) => partOfEdit(now, edit) === partOfEdit(base, edit)) ? 'fits' : 'changed-since';
  };
  return [
    ...units.map((task) => ({ at: 'unit', task, fate: fateOf(task) }) as const),
    ...rig.map((task) => ({ at: 'rig', task, fate: fateOf(task) }) as const),
  ];
}

/** Whether a line can still be taken. */
export const isTakeable = ({ fate }: ProposalLine): boolean => fate === 'fits' || fate === 'changed-since';
