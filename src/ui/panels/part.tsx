import { type ReactNode, useId } from 'react';

export interface PartProps {
  readonly title: string;
  readonly about?: string;
  /** What can be done with the whole part, beside its title. */
  readonly actions?: ReactNode;
  /** Where a link within the page leads. */
  readonly anchor?: string;
  readonly children: ReactNode;
}

/** A part of a page under its own heading, ruled like a group of a sheet. */
export function Part({ title, about, actions, anchor, children }: PartProps) {
  const id = useId();
  return (
    <section id={anchor} aria-labelledby={id}>
      <div className="flex flex-wrap items-baseline gap-x-4 gap-y-1 border-b border-ink pb-1">
        <h2 id={id} className="text-name">
          {title}
        </h2>
        {about === undefined ? null : <p className="text-soft">{about}</p>}
        {actions === undefined ? null : <div className="ml-auto">{actions}</div>}
      </div>
      {children}
    </section>
  );
}
