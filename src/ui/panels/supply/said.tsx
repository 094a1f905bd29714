import type { Finding } from '#engine/model/finding.ts';
import { findingSentence } from '#words/findings.ts';
import { Mark } from '../../kit/mark.tsx';
import type { Scene } from './scene.ts';

export interface SaidProps {
  readonly scene: Scene;
  readonly of: (finding: Finding) => boolean;
}

/** The findings that stand of a part of the page, in full. */
export function Said({ scene, of }: SaidProps) {
  const found = scene.findings.filter(of);
  if (found.length === 0) return null;
  return (
    <ul>
      {found.map((finding) => (
        <li key={finding.key} className="[overflow-wrap:anywhere]">
          <Mark severity={finding.severity} className="mr-1" />
          {findingSentence(finding, scene.rig)}
        </li>
      ))}
    </ul>
  );
}
