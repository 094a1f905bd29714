import type { Finding } from '#engine/model/finding.ts';
import type { Rig } from '#engine/model/rig.ts';
import { findingSentence } from '#words/findings.ts';
import { PREVIEW_WORDS } from '#words/sheet.ts';
import { Mark } from '../kit/mark.tsx';

export interface PreviewFindingsProps {
  readonly title: string;
  readonly findings: readonly Finding[];
  readonly rig: Rig;
}

/** Findings that are shown. */
const MOST = 50;

/** The findings that a plan clears or raises; nothing when there are none. */
export function PreviewFindings({ title, findings, rig }: PreviewFindingsProps) {
  if (findings.length === 0) return null;
  return (
    <section>
      <h3>{title}</h3>
      <ul>
        {findings.slice(0, MOST).map((finding) => (
          <li key={finding.key}>
            <Mark severity={finding.severity} className="mr-1" />
            {findingSentence(finding, rig)}
          </li>
        ))}
      </ul>
      {findings.length > MOST ? <p className="text-soft">{PREVIEW_WORDS.more(findings.length - MOST)}</p> : null}
    </section>
  );
}
