import type { ReactNode } from 'react';

export interface FieldFrameProps {
  readonly id: string;
  readonly label: string;
  readonly hint?: string | undefined;
  readonly error?: string | undefined;
  readonly children: ReactNode;
}

/** Label above, control, then what helps and what is wrong; the control points at both with `describedBy`. */
export function FieldFrame({ id, label, hint, error, children }: FieldFrameProps) {
  return (
    <div className="flex flex-col gap-1">
      <label htmlFor={id} className="font-medium">
        {label}
      </label>
      {children}
      {hint === undefined ? null : (
        <p id={`${id}-hint`} className="text-small text-soft">
          {hint}
        </p>
      )}
      {error === undefined ? null : (
        <p id={`${id}-error`} className="text-small text-blocker">
          {error}
        </p>
      )}
    </div>
  );
}

/** The ids that `aria-describedby` of the control names, or undefined when there is nothing to say. */
export function describedBy({ id, hint, error }: Pick<FieldFrameProps, 'id' | 'hint' | 'error'>): string | undefined {
  const ids = [hint === undefined ? '' : `${id}-hint`, error === undefined ? '' : `${id}-error`].filter(Boolean);
  return ids.length === 0 ? undefined : ids.join(' ');
}

export const CONTROL_CLASSES =
  'min-h-control w-full rounded-control border border-edge bg-sheet px-2 text-ink placeholder:text-soft disabled:text-soft aria-invalid:border-blocker';
