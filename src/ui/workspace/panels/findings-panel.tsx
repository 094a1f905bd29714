import { memo, useSyncExternalStore } from 'react';
import { getRow } from '#base/table.ts';
import type { Finding } from '#engine/model/finding.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import { findingSentence, unitName } from '#words/findings.ts';
import { FINDINGS_WORDS } from '#words/sheet.ts';
import type { Sheet } from '../../grid/sheet.ts';
import { useSheet } from '../../grid/use-sheet.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import { Mark } from '../../kit/mark.tsx';
import { lineOf } from '../../live/rows/lines.ts';
import { Panel } from '../panel.tsx';
import { PlanLink } from '../plan-link.tsx';

/** More lines than this are not drawn: nobody reads them, and each cleared one lets another in. */
const MOST = 300;

export interface FindingsPanelProps {
  readonly sheet: Sheet;
  readonly onGo: (finding: Finding) => void;
  readonly onClose: () => void;
}

/** Every finding, gravest first; each leads to its row, and to the plan that clears it where there is one. */
export function FindingsPanel({ sheet, onGo, onClose }: FindingsPanelProps) {
  const { store } = sheet;
  const findings = useSyncExternalStore(store.subscribe, store.findings);
  useSheet(sheet, (state) => state.layout);
  const { order } = sheet.ground();
  return (
    <Panel title={FINDINGS_WORDS.title} onClose={onClose}>
      {findings.length === 0 ? <p>{FINDINGS_WORDS.none}</p> : null}
      {findings.length > MOST ? <p className="text-soft">{FINDINGS_WORDS.first(MOST)}</p> : null}
      <ul className="flex flex-col">
        {findings.slice(0, MOST).map((finding) => (
          <FindingLine
            key={finding.key}
            sheet={sheet}
            finding={finding}
            shown={finding.fixtures.find((id) => lineOf(order, id) >= 0)}
            onGo={onGo}
          />
        ))}
      </ul>
    </Panel>
  );
}

interface FindingLineProps extends Pick<FindingsPanelProps, 'sheet' | 'onGo'> {
  readonly finding: Finding;
  /** The first of its rows that the filter shows. */
  readonly shown: FixtureId | undefined;
}

// A finding is the same object as long as it stands: others’ edits do not draw the whole list again.
const FindingLine = memo(function FindingLine({ sheet, finding, shown, onGo }: FindingLineProps) {
  const rig = sheet.store.rig();
  const unit = unitName(getRow(rig.fixtures, shown ?? finding.fixtures[0] ?? ''));
  return (
    <li className="flex gap-2 border-b border-rule py-1">
      <Mark severity={finding.severity} />
      <div className="flex min-w-0 flex-col items-start [overflow-wrap:anywhere]">
        <p>{findingSentence(finding, rig)}</p>
        <p className="flex flex-wrap gap-x-3 text-soft">
          {finding.fixtures.length > 0 && shown === undefined ? FINDINGS_WORDS.hidden : null}
          {shown === undefined ? null : (
            <LinkButton className="text-soft" onClick={() => onGo(finding)}>
              {FINDINGS_WORDS.go(unit)}
            </LinkButton>
          )}
          <PlanLink sheet={sheet} finding={finding} within="list" />
        </p>
      </div>
    </li>
  );
});
