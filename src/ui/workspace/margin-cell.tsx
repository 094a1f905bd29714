import { findingSentenceFor } from '#words/findings.ts';
import { SHEET_WORDS } from '#words/sheet.ts';
import type { Sheet } from '../grid/sheet.ts';
import { Mark } from '../kit/mark.tsx';
import type { RowView } from '../live/row-views.ts';
import { PlanLink } from './plan-link.tsx';

export interface MarginCellProps {
  readonly sheet: Sheet;
  readonly row: RowView;
}

/** What the checks say of a row, level with it: the gravest finding in words, and how many more there are. */
export function MarginCell({ sheet, row }: MarginCellProps) {
  const [first] = row.findings;
  if (first === undefined) return null;
  const sentence = findingSentenceFor(first, row.fixture.id, sheet.store.rig());
  const more = row.findings.length - 1;
  return (
    <div className="flex min-w-0 items-baseline gap-1" title={sentence}>
      <Mark severity={first.severity} />
      <span className="min-w-0 truncate @max-[62rem]/sheet:sr-only">{sentence}</span>
      <span className="contents @max-[62rem]/sheet:hidden">
        <PlanLink sheet={sheet} finding={first} within="grid" />
      </span>
      {more === 0 ? null : (
        <span className="shrink-0 text-soft @max-[62rem]/sheet:sr-only">+ {SHEET_WORDS.more(more)}</span>
      )}
    </div>
  );
}
