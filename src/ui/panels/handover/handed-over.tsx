import { useMemo } from 'react';
import { CAUTION_FOOT } from '#words/fixture-types.ts';
import { handoverLines } from '#words/handover-lines.ts';
import { RECEIVE_WORDS as words } from '#words/handovers.ts';
import { Mark } from '../../kit/mark.tsx';
import { FindingLines } from '../../plant/finding-lines.tsx';
import { ShowMore, useShown } from '../../print/show-more.tsx';
import { Part } from '../part.tsx';
import { UnitTable } from '../revisions/unit-table.tsx';
import type { Offered } from './use-offered.ts';

interface HandedOverProps extends Offered {
  readonly number: number;
}

/** What a handover brings: what can hurt first, then what is open, then the patch. */
export function HandedOver({ rig, findings, number }: HandedOverProps) {
  const { hazards, faults, hires, notes } = useMemo(() => handoverLines(rig), [rig]);
  const { shown, onMore } = useShown(findings.length);
  return (
    <>
      <Lines title={words.hazards} lines={hazards} none={words.noHazards} mark="caution" foot={CAUTION_FOOT} />
      <Lines title={words.faults} lines={faults} none={words.noFaults} mark="caution" />
      <Part title={words.findings}>
        {findings.length === 0 ? <p className="py-2">{words.noFindings}</p> : null}
        <FindingLines className="py-2" rig={rig} findings={findings.slice(0, shown)} />
        <ShowMore shown={shown} all={findings.length} onMore={onMore} />
      </Part>
      <Lines title={words.hires} lines={hires} none={words.noHires} />
      <Lines title={words.notes} lines={notes} none={words.noNotes} />
      <UnitTable rig={rig} number={number} />
    </>
  );
}

interface LinesProps {
  readonly title: string;
  readonly lines: readonly string[];
  readonly none: string;
  readonly mark?: 'caution';
  /** What is said below them, when there are any. */
  readonly foot?: string;
}

function Lines({ title, lines, none, mark, foot }: LinesProps) {
  if (lines.length === 0)
    return (
      <Part title={title}>
        <p className="py-2 text-soft">{none}</p>
      </Part>
    );
  return (
    <Part title={title}>
      <ul className="py-2">
        {lines.map((line, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: they are of a frozen rig and stay where they are; two may say the same.
          <li key={at} className="flex gap-2 py-0.5 whitespace-pre-wrap [overflow-wrap:anywhere]">
            {mark === undefined ? null : <Mark severity={mark} />}
            <span>{line}</span>
          </li>
        ))}
      </ul>
      {foot === undefined ? null : <p className="text-soft">{foot}</p>}
    </Part>
  );
}
