import type { Finding } from '#engine/model/finding.ts';
import type { Rig } from '#engine/model/rig.ts';
import { findingSentence } from '#words/findings.ts';
import { Mark } from '../kit/mark.tsx';

export interface FindingLinesProps {
  readonly rig: Rig;
  readonly findings: readonly Finding[];
  readonly className?: string;
}

/** Findings in full, beside what they are about; nothing when there are none. */
export function FindingLines({ rig, findings, className }: FindingLinesProps) {
  if (findings.length === 0) return null;
  return (
    <ul className={className}>
      {findings.map((finding) => (
        <li key={finding.key} className="flex gap-2 [overflow-wrap:anywhere]">
          <Mark severity={finding.severity} />
          <span>{findingSentence(finding, rig)}</span>
        </li>
      ))}
    </ul>
  );
}
