import { useLayoutEffect, useRef } from 'react';
import type { Finding } from '#engine/model/finding.ts';
import { findingSentenceFor } from '#words/findings.ts';
import { SHEET_WORDS } from '#words/sheet.ts';
import type { MarginProps } from '../grid/grid-row.tsx';
import { Mark } from '../kit/mark.tsx';
import { PlanLink } from './plan-link.tsx';

/** What the checks say of a row, level with it: the gravest finding in one line, and all of them beside the cursor. */
export function MarginCell({ sheet, row, state }: MarginProps) {
  const [first] = row.findings;
  if (first === undefined) return null;
  if (state === 'open') return <OpenMargin sheet={sheet} row={row} state={state} />;
  const more = row.findings.length - 1;
  return (
    <div className="flex min-w-0 items-baseline gap-1">
      <Mark severity={first.severity} />
      <span className="min-w-0 truncate @max-[70rem]/sheet:sr-only">{wordsOf(sheet, row, first)}</span>
      <span className="contents @max-[70rem]/sheet:hidden">
        <PlanLink sheet={sheet} finding={first} within="grid" />
      </span>
      {more === 0 ? null : (
        <span className="shrink-0 text-soft @max-[70rem]/sheet:sr-only">+ {SHEET_WORDS.more(more)}</span>
      )}
    </div>
  );
}

const wordsOf = (sheet: MarginProps['sheet'], row: MarginProps['row'], finding: Finding) =>
  findingSentenceFor(finding, row.fixture.id, sheet.store.rig());

/** All findings of a row in full, over the rows below it, or above where the sheet ends. */
function OpenMargin({ sheet, row }: MarginProps) {
  const box = useRef<HTMLUListElement>(null);
  useLayoutEffect(() => {
    const node = box.current;
    const end = node?.closest('[role="grid"]')?.getBoundingClientRect().bottom;
    if (node === null || end === undefined) return;
    delete node.dataset.up;
    if (node.getBoundingClientRect().bottom > end) node.dataset.up = '';
  });
  return (
    <>
      <span className="@min-[70rem]/sheet:hidden">
        {row.findings.slice(0, 1).map((finding) => (
          <Mark key={finding.key} severity={finding.severity} />
        ))}
      </span>
      <ul
        ref={box}
        className="absolute inset-x-0 top-0 border-b-2 border-rule-strong bg-sheet px-3 py-[3px] data-up:top-auto data-up:bottom-0 data-up:border-t-2 data-up:border-b-0 @max-[70rem]/sheet:hidden"
      >
        {row.findings.map((finding) => (
          <li key={finding.key} className="flex items-baseline gap-1">
            <Mark severity={finding.severity} />
            <span>
              {wordsOf(sheet, row, finding)} <PlanLink sheet={sheet} finding={finding} within="grid" />
            </span>
          </li>
        ))}
      </ul>
    </>
  );
}
