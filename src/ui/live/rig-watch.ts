import { getRow } from '#base/table.ts';
import type { RigChange, RigReader } from '#document/read/rig-reader.ts';
import { type Checker, createChecker } from '#engine/check/checker.ts';
import type { FindingsDelta } from '#engine/check/standing-findings.ts';
import type { NewestRevisions } from '#engine/check/type-findings.ts';
import type { Finding } from '#engine/model/finding.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';
import type { FlagChange, RowDifference } from './rows/advance-order.ts';

/** One step of a rig with its findings: what a view needs to follow it. */
export interface RigStep extends FlagChange {
  readonly rig: Rig;
  /** Fixtures that were added, removed or changed. */
  readonly changes: readonly RowDifference[];
  /** Fixtures of which a finding came or went. */
  readonly refound: ReadonlySet<FixtureId>;
  /** Whether modes changed: the footprint of any row may be another. */
  readonly remodelled: boolean;
}

/** A rig kept up with its document, and its findings kept up with the rig. */
export interface RigWatch {
  readonly checker: Checker;
  rig(): Rig;
  onStep(listen: (step: RigStep) => void): () => void;
  /** What the crew's library has now: a step of its own, of findings alone. */
  setLibrary(library: NewestRevisions): void;
}

/** Follows a reader: each change of the document becomes one step, findings included, before anybody is told. */
export function watchFindings(reader: RigReader): RigWatch {
  const checker = createChecker(reader.rig());
  const listeners = new Set<(step: RigStep) => void>();
  const tell = (step: RigStep) => {
    for (const listen of [...listeners]) listen(step);
  };
  reader.onChange((change) => tell(stepOf(checker, change, checker.update(change.after))));
  return {
    checker,
    rig: () => checker.rig,
    onStep(listen) {
      listeners.add(listen);
      return () => listeners.delete(listen);
    },
    setLibrary(library) {
      const { rig } = checker;
      tell(stepOf(checker, { before: rig, after: rig, fixtures: [] }, checker.setLibrary(library)));
    },
  };
}

type Changed = Pick<RigChange, 'before' | 'after' | 'fixtures'>;

function stepOf(checker: Checker, { before, after, fixtures }: Changed, delta: FindingsDelta): RigStep {
  const { added, removed } = delta;
  const balance = new Map<FixtureId, number>();
  count(balance, added, 1);
  count(balance, removed, -1);
  const isFlagged = (id: FixtureId) => checker.findingsOf(id).length > 0;
  const reflagged = [...balance].filter(([id, more]) => isFlagged(id) !== checker.findingsOf(id).length > more);
  const turned = new Set(reflagged.map(([id]) => id));
  return {
    rig: after,
    changes: fixtures.map((id) => ({ id, before: getRow(before.fixtures, id), after: getRow(after.fixtures, id) })),
    refound: new Set(balance.keys()),
    remodelled: before.modes !== after.modes,
    reflagged: [...turned],
    isFlagged,
    wasFlagged: (id) => isFlagged(id) !== turned.has(id),
  };
}

function count(balance: Map<FixtureId, number>, findings: readonly Finding[], by: number): void {
  for (const { fixtures } of findings) for (const id of fixtures) balance.set(id, (balance.get(id) ?? 0) + by);
}
