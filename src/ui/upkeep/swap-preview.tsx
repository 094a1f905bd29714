import { useMemo } from 'react';
import type { FixtureId } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';
import { previewPlan } from '#engine/patch/preview-plan.ts';
import { type DeviceIn, swapDevice } from '#engine/patch/upkeep/swap-device.ts';
import { planRefusalSentence } from '#words/plans.ts';
import { cellTitle, PREVIEW_WORDS, valueWords } from '#words/sheet.ts';
import { PreviewFindings } from '../workspace/preview-findings.tsx';

export interface SwapPreviewProps {
  readonly rig: Rig;
  readonly unit: FixtureId;
  readonly device: DeviceIn;
  /** The id of the fault that is mended by it; empty: none. */
  readonly mended: string;
}

/** What a swap changes at the unit, and which findings it clears and raises. */
export function SwapPreview({ rig, unit, device, mended }: SwapPreviewProps) {
  const seen = useMemo(() => {
    // Serial numbers, reason and person change nothing that can be seen here.
    const plan = swapDevice(rig, {
      ...{ id: 'preview', unit, called: '-', by: '', on: '', serialOut: '', serialIn: '', why: '' },
      device,
      mends: mended === '' ? undefined : { fault: mended, done: '-' },
    });
    return plan.ok ? previewPlan(rig, plan.value) : planRefusalSentence(plan.error, rig);
  }, [rig, unit, device, mended]);
  if (typeof seen === 'string') return <p role="status">{seen}</p>;
  const { changes, findingsAdded, findingsRemoved } = seen;
  return (
    <div role="status" className="flex flex-col gap-2 border-t border-rule-strong pt-2">
      {changes.length === 0 ? null : (
        <ul>
          {changes.map(({ field, from, to }) => (
            <li key={field}>
              {cellTitle(field)}: {valueWords(field, from)} → <b>{valueWords(field, to)}</b>
            </li>
          ))}
        </ul>
      )}
      {findingsAdded.length + findingsRemoved.length === 0 ? <p className="text-soft">{PREVIEW_WORDS.same}</p> : null}
      <PreviewFindings title={PREVIEW_WORDS.cleared(findingsRemoved.length)} findings={findingsRemoved} rig={rig} />
      <PreviewFindings title={PREVIEW_WORDS.raised(findingsAdded.length)} findings={findingsAdded} rig={seen.rig} />
    </div>
  );
}
