import type { ReactNode } from 'react';
import type { Severity } from '#engine/model/finding.ts';
import { joinClasses } from './join-classes.ts';
import { Mark } from './mark.tsx';

/** What a person is told when something did not go as asked: what happened, where, and what to do next. */
export interface Said {
  readonly what: string;
  readonly where?: string | undefined;
  readonly next?: string | undefined;
}

export interface MessageProps {
  readonly severity: Severity;
  readonly said: Said;
  readonly children?: ReactNode;
}

const EDGES = { blocker: 'border-blocker', caution: 'border-caution', note: 'border-note' } as const;

/** A message in the page, announced at once when it is a blocker and politely otherwise. */
export function Message({ severity, said, children }: MessageProps) {
  return (
    <div
      role={severity === 'blocker' ? 'alert' : 'status'}
      className={joinClasses('flex gap-2 border-l-2 bg-sheet py-2 pr-3 pl-3', EDGES[severity])}
    >
      <Mark severity={severity} />
      <div className="min-w-0 [overflow-wrap:anywhere]">
        <p className="font-medium">{said.what}</p>
        {said.where === undefined ? null : <p className="text-soft">{said.where}</p>}
        {said.next === undefined ? null : <p>{said.next}</p>}
        {children}
      </div>
    </div>
  );
}
