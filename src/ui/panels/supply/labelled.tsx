import type { ReactNode } from 'react';

export interface LabelledProps {
  readonly label: string;
  readonly children: ReactNode;
}

/** A cell under a small word; the cell says its whole name to a screen reader itself. */
export function Labelled({ label, children }: LabelledProps) {
  return (
    <div className="flex min-w-0 flex-col">
      <span aria-hidden="true" className="text-small text-soft">
        {label}
      </span>
      {children}
    </div>
  );
}
