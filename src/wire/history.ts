import { z } from 'zod';
import type { Change, ChangePart } from '#engine/history/change.ts';
import type { CardKind } from '#engine/model/card.ts';
import { FIELDS } from '#engine/model/field.ts';
import { Id } from './id.ts';
import { RigRef } from './rigs.ts';

const Seq = z.number().int().min(0).max(Number.MAX_SAFE_INTEGER);
const RowId = z.string().min(1).max(64);

/** Which changes are asked for; null: whatever it is. */
const HistoryFilter = z.object({
  /** The id of a unit. */
  unit: RowId.nullable().default(null),
  /** Part of what a unit was called when it changed. */
  named: z.string().trim().max(200).nullable().default(null),
  /** A cell of units. */
  field: z.enum(FIELDS).nullable().default(null),
  /** User id of who did it. */
  person: Id.nullable().default(null),
  from: z.iso.datetime().nullable().default(null),
  to: z.iso.datetime().nullable().default(null),
});
export type HistoryFilter = z.infer<typeof HistoryFilter>;

/** A page of steps, the newest first: those before `cursor`. */
export const AskHistory = RigRef.extend({ filter: HistoryFilter, cursor: Seq.nullish() });

/** The changes of one step, those from `cursor` on. */
export const AskStep = RigRef.extend({ filter: HistoryFilter, seq: Seq, cursor: Seq.nullish() });

/** A change as it is told. */
export interface ToldChange {
  /** Its place among the changes of its step. */
  readonly nth: number;
  /** What its row was called then. */
  readonly name: string;
  /** Whether it is too long to be told whole: it then says neither `before` nor `after`. */
  readonly long: boolean;
  readonly change: Change;
}

/** How many changes of one kind a step made. */
export interface ChangeCount {
  readonly part: ChangePart;
  /** Of cards: which. */
  readonly card: CardKind | null;
  readonly what: 'added' | 'removed' | 'set';
  readonly field: string | null;
  readonly count: number;
}

/** What somebody did at once: a row of the rig's log. */
export interface HistoryStep {
  readonly seq: number;
  /** User id and name; the name is null when there is no such account any more. */
  readonly by: string;
  readonly byName: string | null;
  /** ISO 8601, UTC. */
  readonly at: string;
  /** All its changes that are asked for, counted. */
  readonly counts: readonly ChangeCount[];
  readonly total: number;
  /** The first of them. */
  readonly changes: readonly ToldChange[];
}

export interface HistoryPage {
  readonly steps: readonly HistoryStep[];
  /** What to ask for next; null when there are no more. */
  readonly next: number | null;
  /** Until when what was done is not all known, as the beginning of the log was trimmed; null: all of it is. */
  readonly unknownUntil: string | null;
}

export interface StepPage {
  readonly changes: readonly ToldChange[];
  readonly next: number | null;
}

/** Somebody who has changed a rig. */
export interface HistoryPerson {
  readonly id: string;
  /** Null when there is no such account any more. */
  readonly name: string | null;
}

/** The path of a rig as it was after step `seq` of its log: frozen, as text. */
export const momentPath = (rigId: string, seq: number): string =>
  `/api/rigs/${encodeURIComponent(rigId)}/moments/${seq}`;
