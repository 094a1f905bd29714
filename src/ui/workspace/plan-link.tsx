import { useSyncExternalStore } from 'react';
import { getRow } from '#base/table.ts';
import type { Finding } from '#engine/model/finding.ts';
import { isLocked } from '#engine/model/locked.ts';
import type { Rig } from '#engine/model/rig.ts';
import { clearClash } from '#engine/patch/clear-clash.ts';
import { LOCK_WORDS } from '#words/locks.ts';
import { movesSentence } from '#words/plans.ts';
import { RIG_MENU_WORDS } from '#words/rig-pages.ts';
import { DEAL_WORDS } from '#words/rig-types.ts';
import { TYPES_WORDS } from '#words/sheet.ts';
import { pageFor, panelFor } from '../grid/panel-for.ts';
import type { Sheet } from '../grid/sheet.ts';
import { showPlan } from '../grid/show-plan.ts';
import { LinkButton } from '../kit/link-button.tsx';
import { StayLink } from '../kit/stay-link.tsx';
import { LINK_CLASSES } from '../kit/text-link.tsx';
import { rigAddress, rigPath } from '../panels/rig/rig-address.ts';

export interface PlanLinkProps {
  readonly sheet: Sheet;
  readonly finding: Finding;
  /** Within the grid it is no stop of Tab: F9 does the same. */
  readonly within: 'grid' | 'list';
}

/** The plan that clears a finding, as a link that shows it first; or the way to where it is dealt with; or that locks hold it; else nothing. */
export function PlanLink({ sheet, finding, within }: PlanLinkProps) {
  const { store } = sheet;
  // Who moves hangs on who is locked, and a lock changes no finding.
  useSyncExternalStore(store.subscribe, () => locksOf(store.rig(), finding));
  const tabIndex = within === 'grid' ? -1 : 0;
  const page = pageFor(finding);
  if (page !== undefined) {
    return (
      <StayLink
        tabIndex={tabIndex}
        className={`${LINK_CLASSES} text-soft`}
        href={rigPath(rigAddress(window.location.pathname).rigId, page)}
      >
        {DEAL_WORDS[finding.rule] ?? RIG_MENU_WORDS.pages[page]}
      </StayLink>
    );
  }
  if (!store.canEdit()) return null;
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
  const held = !plan.ok && (plan.error.code === 'held' || plan.error.code === 'locked');
  if (!plan.ok && !held) return null;
  // Made anew when pressed: others may have taken the room since.
  const look = () => showPlan(sheet, clearClash(store.rig(), finding, store.occupancy()));
  return (
    <LinkButton tabIndex={tabIndex} className="shrink-0 text-soft" onClick={look}>
      {plan.ok ? movesSentence(plan.value, rig) : LOCK_WORDS.held}
    </LinkButton>
  );
}

/** Which of the first units of a clash are locked, as a text that is the same while they are. */
function locksOf(rig: Rig, finding: Finding): string {
  if (finding.rule !== 'slots-claimed-twice' && finding.rule !== 'past-the-end') return '';
  const first = finding.fixtures.slice(0, LOOKED_AT).map((id) => getRow(rig.fixtures, id));
  return first.map((fixture) => (fixture !== undefined && isLocked(fixture) ? '1' : '0')).join('');
}

/** In a larger crowd a link may show an old plan; it is made anew when it is pressed. */
const LOOKED_AT = 16;
