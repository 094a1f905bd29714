import type { Severity } from '#engine/model/finding.ts';
import { SEVERITY_WORDS } from '#words/screens.ts';
import { joinClasses } from './join-classes.ts';

const MARKS = {
  blocker: { sign: '■', colour: 'text-blocker' },
  caution: { sign: '▲', colour: 'text-caution' },
  note: { sign: '○', colour: 'text-note' },
} as const;

export interface MarkProps {
  readonly severity: Severity;
  readonly className?: string;
}

/** The sign of a severity, in shape and colour, with its word for a screen reader. */
export function Mark({ severity, className }: MarkProps) {
  const { sign, colour } = MARKS[severity];
  return (
    <span className={joinClasses(colour, className)}>
      <span aria-hidden="true">{sign}</span>
      <span className="sr-only">{SEVERITY_WORDS[severity].one}: </span>
    </span>
  );
}
