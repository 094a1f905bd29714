import { type Result, refuse } from '#base/result.ts';
import { getRow } from '#base/table.ts';
import { setCard } from '../../model/card-edits.ts';
import type { Edit, Plan } from '../../model/edit.ts';
import type { FixtureId } from '../../model/ids.ts';
import { type Fault, recordOf } from '../../model/record.ts';
import type { Rig } from '../../model/rig.ts';
import { planOf } from '../chosen.ts';
import type { PlanRefusal } from '../plan-refusal.ts';

/** Who did something to which unit, and on which day. */
export interface Upkeep {
  /** The id of the card that says so, made by whoever asks. */
  readonly id: string;
  readonly unit: FixtureId;
  /** What the unit is called now: of use once it is gone. */
  readonly called: string;
  readonly by: string;
  /** `2026-11-25`. */
  readonly on: string;
}

export interface FaultReport extends Upkeep {
  readonly what: string;
}

/** Writes down what is wrong with a unit. [UK2] */
export function reportFault(rig: Rig, { id, unit, called, what, by, on }: FaultReport): Result<Plan, PlanRefusal> {
  if (getRow(rig.fixtures, unit) === undefined) return refuse({ code: 'no-such-fixture', fixture: unit });
  if (what.trim() === '') return refuse({ code: 'nothing-said', of: 'fault' });
  const seen = { seenBy: by.trim(), seenOn: on.trim(), state: 'open' };
  return planOf(rig, 'report-fault', setCard('fault', id, { unit, called, what: what.trim(), ...seen }));
}

/** What was done about a fault, by whom and when. */
export interface Mending {
  readonly fault: string;
  readonly done: string;
  readonly by: string;
  readonly on: string;
}

/** Marks a fault mended. [UK3] */
export function mendFault(rig: Rig, mending: Mending): Result<Plan, PlanRefusal> {
  const fault = faultOf(rig, mending.fault);
  if (fault === undefined) return refuse({ code: 'no-such-card', card: 'fault' });
  if (mending.done.trim() === '') return refuse({ code: 'nothing-said', of: 'mending' });
  return planOf(rig, 'mend-fault', fault.state === 'mended' ? [] : mendEdits(mending));
}

export const mendEdits = ({ fault, done, by, on }: Mending): readonly Edit[] =>
  setCard('fault', fault, { state: 'mended', done: done.trim(), doneBy: by.trim(), doneOn: on.trim() });

/** Opens a mended fault again: what was done did not help, and is taken away. [UK3] */
export function reopenFault(rig: Rig, id: string): Result<Plan, PlanRefusal> {
  const fault = faultOf(rig, id);
  if (fault === undefined) return refuse({ code: 'no-such-card', card: 'fault' });
  const edits = setCard('fault', id, { state: 'open', done: null, doneBy: null, doneOn: null });
  return planOf(rig, 'mend-fault', fault.state === 'open' ? [] : edits);
}

export const faultOf = (rig: Rig, id: string): Fault | undefined =>
  recordOf(rig.cards).faults.find((fault) => fault.id === id);
