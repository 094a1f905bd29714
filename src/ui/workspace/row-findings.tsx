import { useSyncExternalStore } from 'react';
import type { FixtureId } from '#engine/model/ids.ts';
import { findingSentenceFor } from '#words/findings.ts';
import type { Sheet } from '../grid/sheet.ts';
import { useSheet } from '../grid/use-sheet.ts';
import { Mark } from '../kit/mark.tsx';
import { PlanLink } from './plan-link.tsx';

/** All findings of the row the cursor is in: where the sheet is narrow its margin folds under it, to here. */
export function RowFindings({ sheet }: { readonly sheet: Sheet }) {
  const row = useSheet(sheet, (state) => state.selection?.cursor.row);
  return row === undefined ? null : <FindingsOf sheet={sheet} row={row} />;
}

function FindingsOf({ sheet, row }: { readonly sheet: Sheet; readonly row: FixtureId }) {
  const { store } = sheet;
  const findings = useSyncExternalStore(store.subscribe, () => store.findingsOf(row));
  if (findings.length === 0) return null;
  return (
    <ul className="max-h-[30%] shrink-0 overflow-y-auto border-t border-rule-strong px-4 py-1">
      {findings.map((finding) => (
        <li key={finding.key} className="flex flex-wrap items-baseline gap-x-2">
          <Mark severity={finding.severity} />
          <span>{findingSentenceFor(finding, row, store.rig())}</span>
          <PlanLink sheet={sheet} finding={finding} within="list" />
        </li>
      ))}
    </ul>
  );
}
