import type { ReactNode } from 'react';
import { joinClasses } from '../kit/join-classes.ts';

export interface LabelledProps {
  readonly label: string;
  readonly children: ReactNode;
  /** How the word looks besides. */
  readonly looks?: string;
}

/** A cell under a small word; the cell says its whole name to a screen reader itself. */
export function Labelled({ label, children, looks }: LabelledProps) {
  return (
    <div className="flex min-w-0 flex-col">
      <span aria-hidden="true" className={joinClasses('text-small text-soft', looks)}>
        {label}
      </span>
      {children}
    </div>
  );
}
