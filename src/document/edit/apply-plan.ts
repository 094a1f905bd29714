import type * as Y from 'yjs';
import { ok, type Result, refuse } from '#base/result.ts';
import { applyEdits } from '#engine/model/apply-edits.ts';
import type { Plan, PlanName } from '#engine/model/edit.ts';
import { readingOf } from '../read/rig-reader.ts';
import { formatOf, mapsOf, raiseFormat } from '../schema/rig-doc.ts';
import { EDIT_LIMIT, planSchema } from './edit-schema.ts';
import { writeDifference } from './write-difference.ts';

/** Why a plan was not carried out; nothing of it was written. */
export type EditRefusal =
  /** The document has not arrived yet, or is no rig. */
  | { readonly code: 'not-a-rig' }
  /** The document was written by a newer version of this program. */
  | { readonly code: 'newer-format' }
  | { readonly code: 'too-many-edits'; readonly count: number; readonly limit: number }
  /** `edit` is the place of the edit in the plan, from 0; `path` the part of it that is wrong; `problem` what is wrong. */
  | { readonly code: 'malformed'; readonly edit: number | null; readonly path: string; readonly problem: string };

const PLAN_NAME = Symbol('plan name');

/** The name of the plan that a transaction carries out, if it is one. */
export function planNameOf(transaction: Y.Transaction): PlanName | undefined {
  return transaction.meta.get(PLAN_NAME);
}

/**
 * Carries out a plan as one transaction of one origin, all or nothing. Afterwards the document reads as `applyEdits` of its
 * reading before. It receives exactly the difference: a cell that already holds its new value is not written.
 */
export function applyPlan(doc: Y.Doc, plan: Plan, origin: unknown): Result<void, EditRefusal> {
  const format = formatOf(doc);
  if (format !== 'current') return refuse({ code: format === 'newer' ? 'newer-format' : 'not-a-rig' });
  const refusal = refusalOf(plan);
  if (refusal !== undefined) return refuse(refusal);
  // A transaction of its own: taking the plan back must not take this back.
  raiseFormat(doc, origin);
  const reading = readingOf(doc);
  const after = applyEdits(reading.rig(), plan.edits);
  doc.transact((transaction) => {
    transaction.meta.set(PLAN_NAME, plan.name);
    writeDifference(doc, mapsOf(doc), reading, after, plan.edits);
  }, origin);
  return ok(undefined);
}

function refusalOf(plan: Plan): EditRefusal | undefined {
  if (plan.edits.length > EDIT_LIMIT) {
    return { code: 'too-many-edits', count: plan.edits.length, limit: EDIT_LIMIT };
  }
  const issue = planSchema.safeParse(plan).error?.issues[0];
  if (issue === undefined) return undefined;
  const [first, edit, ...rest] = issue.path;
  const inEdit = first === 'edits' && typeof edit === 'number';
  const path = (inEdit ? rest : issue.path).map(String).join('.');
  return { code: 'malformed', edit: inEdit ? edit : null, path, problem: issue.message };
}
