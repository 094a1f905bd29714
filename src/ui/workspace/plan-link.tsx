import type { Finding } from '#engine/model/finding.ts';
import { clearClash } from '#engine/patch/clear-clash.ts';
import { movesSentence } from '#words/plans.ts';
import { DEAL_WORDS } from '#words/rig-types.ts';
import { TYPES_WORDS } from '#words/sheet.ts';
import { panelFor } from '../grid/panel-for.ts';
import type { Sheet } from '../grid/sheet.ts';
import { showPlan } from '../grid/show-plan.ts';
import { LinkButton } from '../kit/link-button.tsx';

export interface PlanLinkProps {
  readonly sheet: Sheet;
  readonly finding: Finding;
  /** Within the grid it is no stop of Tab: F9 does the same. */
  readonly within: 'grid' | 'list';
}

/** The plan that clears a finding, as a link that shows it first; the way to the panel where it is dealt with; else nothing. */
export function PlanLink({ sheet, finding, within }: PlanLinkProps) {
  const { store } = sheet;
  if (!store.canEdit()) return null;
  const tabIndex = within === 'grid' ? -1 : 0;
  const panel = panelFor(finding);
  if (panel !== undefined) {
    return (
      <LinkButton tabIndex={tabIndex} className="shrink-0 text-soft" onClick={() => sheet.set({ panel })}>
        {DEAL_WORDS[finding.rule] ?? TYPES_WORDS.describeWord}
      </LinkButton>
    );
  }
  const rig = store.rig();
  const plan = clearClash(rig, finding, store.occupancy());
  if (!plan.ok) return null;
  // Made anew when pressed: others may have taken the room since.
  const look = () => showPlan(sheet, clearClash(store.rig(), finding, store.occupancy()));
  return (
    <LinkButton tabIndex={tabIndex} className="shrink-0 text-soft" onClick={look}>
      {movesSentence(plan.value, rig)}
    </LinkButton>
  );
}
