import { getRow } from '#base/table.ts';
import { modeOf } from '#engine/model/find-mode.ts';
import type { Finding } from '#engine/model/finding.ts';
import type { Fixture } from '#engine/model/fixture.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import type { Mode, Rig } from '#engine/model/rig.ts';
import type { PersonHere } from './link.ts';

/** Everything the sheet draws of one row. The same object until any of it changes. */
export interface RowView {
  readonly fixture: Fixture;
  /** The mode as the rig knows it. */
  readonly mode: Mode | undefined;
  readonly findings: readonly Finding[];
  /** The other people who are in a cell of this row. */
  readonly people: readonly PersonHere[];
}

const NOBODY: readonly PersonHere[] = Object.freeze([]);

export interface RowSources {
  rig(): Rig;
  findingsOf(id: FixtureId): readonly Finding[];
  peopleIn(id: FixtureId): readonly PersonHere[] | undefined;
}

/** Row views, each made once per state of its row. */
export interface RowViews {
  of(id: FixtureId): RowView | undefined;
  /** Forgets the view of a row that nobody draws any more. */
  drop(id: FixtureId): void;
}

export function createRowViews(sources: RowSources): RowViews {
  const made = new Map<FixtureId, RowView>();
  return {
    of(id) {
      const rig = sources.rig();
      const fixture = getRow(rig.fixtures, id);
      if (fixture === undefined) return undefined;
      const view: RowView = {
        fixture,
        mode: modeOf(rig, fixture),
        findings: sources.findingsOf(id),
        people: sources.peopleIn(id) ?? NOBODY,
      };
      const old = made.get(id);
      if (old && sameView(old, view)) return old;
      made.set(id, view);
      return view;
    },
    drop: (id) => {
      made.delete(id);
    },
  };
}

const sameView = (a: RowView, b: RowView) =>
  a.fixture === b.fixture && a.mode === b.mode && a.findings === b.findings && a.people === b.people;
