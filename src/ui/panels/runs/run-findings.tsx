import type { Finding } from '#engine/model/finding.ts';
import type { Rig } from '#engine/model/rig.ts';
import { findingSentence } from '#words/findings.ts';
import { Mark } from '../../kit/mark.tsx';

export interface RunFindingsProps {
  readonly rig: Rig;
  readonly findings: readonly Finding[];
}

/** What is found of a run, the gravest first. */
export function RunFindings({ rig, findings }: RunFindingsProps) {
  if (findings.length === 0) return null;
  return (
    <ul className="px-4 py-1 sm:px-5">
      {findings.map((finding) => (
        <li key={finding.key}>
          <Mark severity={finding.severity} /> {findingSentence(finding, rig)}.
        </li>
      ))}
    </ul>
  );
}
