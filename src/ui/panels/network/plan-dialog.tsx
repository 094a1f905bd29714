import { type ReactNode, useMemo } from 'react';
import type { Result } from '#base/result.ts';
import { differingRows } from '#base/table.ts';
import type { Plan } from '#engine/model/edit.ts';
import { plantOf } from '#engine/model/plant.ts';
import type { Rig } from '#engine/model/rig.ts';
import type { PlanRefusal } from '#engine/patch/plan-refusal.ts';
import { previewPlan } from '#engine/patch/preview-plan.ts';
import { listenWords, wayWords, NETWORK_WORDS as words } from '#words/network.ts';
import { planRefusalSentence } from '#words/plans.ts';
import { PREVIEW_WORDS } from '#words/sheet.ts';
import { Button } from '../../kit/button.tsx';
import { Dialog } from '../../kit/dialog.tsx';
import type { RigStore } from '../../live/rig-store.ts';
import { PreviewFindings } from '../../workspace/preview-findings.tsx';

/** Lines of a list that are shown. */
const MOST = 50;

export interface PlanDialogProps {
  readonly store: RigStore;
  readonly title: string;
  /** Of `store`'s rig as it stands. */
  readonly plan: Result<Plan, PlanRefusal>;
  /** What there is to choose. */
  readonly children: ReactNode;
  readonly onClose: () => void;
}

/** A plan for the network: what to choose, then what it would set and which findings it clears or raises. */
export function PlanDialog({ store, title, plan, children, onClose }: PlanDialogProps) {
  const apply = () => {
    if (plan.ok) store.apply(plan.value);
    onClose();
  };
  const answers = (
    <>
      <Button onClick={onClose}>{words.leave}</Button>
      <Button look="main" onClick={apply} disabled={!plan.ok}>
        {words.apply}
      </Button>
    </>
  );
  return (
    <Dialog title={title} onClose={onClose} answers={answers}>
      {children}
      {plan.ok ? (
        <Preview rig={store.rig()} plan={plan.value} />
      ) : (
        <p role="status">{planRefusalSentence(plan.error, store.rig())}</p>
      )}
    </Dialog>
  );
}

function Preview({ rig, plan }: { readonly rig: Rig; readonly plan: Plan }) {
  const preview = useMemo(() => previewPlan(rig, plan), [rig, plan]);
  const lines = useMemo(() => linesOf(rig, preview.rig), [rig, preview]);
  const { findingsAdded, findingsRemoved } = preview;
  return (
    <div role="status" className="flex flex-col gap-2">
      <p>{words.changes(lines.length)}</p>
      <ul>
        {lines.slice(0, MOST).map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      {lines.length > MOST ? <p className="text-soft">{words.andMore(lines.length - MOST)}</p> : null}
      {findingsAdded.length + findingsRemoved.length === 0 ? <p className="text-soft">{PREVIEW_WORDS.same}</p> : null}
      <PreviewFindings title={PREVIEW_WORDS.cleared(findingsRemoved.length)} findings={findingsRemoved} rig={rig} />
      <PreviewFindings title={PREVIEW_WORDS.raised(findingsAdded.length)} findings={findingsAdded} rig={preview.rig} />
    </div>
  );
}

/** What would stand of each delivery and port that changes, by universe and by port. */
function linesOf(before: Rig, after: Rig): readonly string[] {
  const { deliveries, ports, nodes } = plantOf(after.cards);
  const changed = new Set(differingRows(before.cards, after.cards).flatMap(({ after: card }) => card?.key ?? []));
  const ways = [...deliveries.values()]
    .filter(({ universe }) => changed.has(String(universe)))
    .sort((a, b) => a.universe - b.universe);
  const heard = [...ports.values()].filter(({ key }) => changed.has(key)).sort((a, b) => a.index - b.index);
  const nameOf = (id: string) => nodes.find((node) => node.id === id)?.name ?? '';
  return [...ways.map(wayWords), ...heard.map((port) => listenWords(nameOf(port.node), port))];
}
