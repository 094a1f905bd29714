import { rowsOf } from '#base/table.ts';
import { createChecker } from '../check/checker.ts';
import { compareFindings } from '../check/compare-findings.ts';
import { applyEdits } from '../model/apply-edits.ts';
import type { Edit, Plan } from '../model/edit.ts';
import { modeOf } from '../model/find-mode.ts';
import type { Finding } from '../model/finding.ts';
import type { FixtureId, ModeId } from '../model/ids.ts';
import type { Rig } from '../model/rig.ts';
import { clearClash } from './clear-clash.ts';

/** Units whose mode takes other slots afterwards. */
interface Resized {
  readonly type: string;
  readonly mode: string;
  readonly before: readonly number[];
  readonly after: readonly number[];
  /** In the order of their ids. */
  readonly units: readonly FixtureId[];
}

/** What taking a type would do to the units of a rig, and how the clashes it makes could be cleared at once. */
export interface TakingPreview {
  readonly resized: readonly Resized[];
  /** Blockers that are not there now. */
  readonly raised: readonly Finding[];
  /** Moves that clear them, to be made with it; empty when there is nothing to clear. */
  readonly moves: readonly Edit[];
  /** Of the blockers raised, those for which nothing was found to move. */
  readonly left: readonly Finding[];
}

/** Clashes that are looked at one by one, at most: a revision that grows moves no more units than a crew would look at. */
const LOOKED_AT = 500;

/** Shows what a plan that takes a type would do, without doing it. [PL18] */
export function previewTaking(rig: Rig, plan: Plan): TakingPreview {
  const after = applyEdits(rig, plan.edits);
  const standing = new Set(
    createChecker(rig)
      .findings()
      .map(({ key }) => key),
  );
  const checker = createChecker(after);
  const isRaised = (finding: Finding) => finding.severity === 'blocker' && !standing.has(finding.key);
  const raised = checker.findings().filter(isRaised);
  const moves: Edit[] = [];
  const left = new Map<string, Finding>();
  for (let looked = 0; looked < LOOKED_AT; looked++) {
    const next = checker.findings().find((finding) => isRaised(finding) && !left.has(finding.key));
    if (next === undefined) break;
    const cleared = clearClash(checker.rig, next, checker.occupancy);
    if (cleared.ok) {
      moves.push(...cleared.value.edits);
      checker.update(applyEdits(checker.rig, cleared.value.edits));
    } else left.set(next.key, next);
  }
  const open = checker.findings().filter(isRaised);
  return { resized: resized(rig, after), raised: [...raised].sort(compareFindings), moves: lastOf(moves), left: open };
}

/** Of several moves of one cell only the last one is made. */
function lastOf(moves: readonly Edit[]): readonly Edit[] {
  const last = new Map<string, Edit>();
  for (const edit of moves) if (edit.kind === 'set-cell') last.set(`${edit.fixture} ${edit.field}`, edit);
  return [...last.values()];
}

function resized(before: Rig, after: Rig): readonly Resized[] {
  const groups = new Map<ModeId, Resized & { readonly units: FixtureId[] }>();
  for (const fixture of rowsOf(after.fixtures)) {
    const old = modeOf(before, fixture);
    const now = modeOf(after, fixture);
    if (old === undefined || now === undefined || old.footprints.join('+') === now.footprints.join('+')) continue;
    const known = groups.get(now.id);
    if (known !== undefined) known.units.push(fixture.id);
    else {
      const { type, mode } = now;
      groups.set(now.id, { type, mode, before: old.footprints, after: now.footprints, units: [fixture.id] });
    }
  }
  return [...groups.values()].map((group) => ({ ...group, units: [...group.units].sort() }));
}
