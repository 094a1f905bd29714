import { useSyncExternalStore } from 'react';
import type { Severity } from '#engine/model/finding.ts';
import { countedSeverity } from '#words/findings.ts';
import { SHEET_WORDS } from '#words/sheet.ts';
import type { Sheet } from '../grid/sheet.ts';
import { Mark } from '../kit/mark.tsx';

const SEVERITIES: readonly Severity[] = ['blocker', 'caution', 'note'];

export interface TallyProps {
  readonly sheet: Sheet;
  /** Goes to the next finding of a severity. */
  readonly onJump: (severity: Severity) => void;
}

/** How many findings there are of each severity; each leads to the next of them. */
export function Tally({ sheet, onJump }: TallyProps) {
  const { store } = sheet;
  const counts = useSyncExternalStore(store.subscribe, store.counts);
  return (
    <ul aria-label={SHEET_WORDS.tally} className="flex flex-wrap gap-x-4">
      {SEVERITIES.map((severity) => (
        <li key={severity}>
          <button
            type="button"
            disabled={counts[severity] === 0}
            className="inline-flex min-h-control items-center gap-1 hover:underline disabled:text-soft disabled:no-underline"
            onClick={() => onJump(severity)}
          >
            <Mark severity={severity} />
            {countedSeverity(counts[severity], severity)}
          </button>
        </li>
      ))}
    </ul>
  );
}
