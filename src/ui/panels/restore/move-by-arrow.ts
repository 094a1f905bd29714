import type { KeyboardEvent } from 'react';

const KINDS = ['done', 'stays'] as const;

/** Arrow keys go from line to line of a restore sheet, and between the two answers of a line; the browser's own space presses. */
export function moveByArrow(event: KeyboardEvent<HTMLElement>): void {
  const here = event.target instanceof HTMLElement ? event.target.dataset.tick : undefined;
  if (here === undefined || event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return;
  const buttons = (kind: string) => [
    ...event.currentTarget.querySelectorAll<HTMLElement>(`[data-tick="${kind}"]:not(:disabled)`),
  ];
  const own = buttons(here);
  const at = own.indexOf(event.target as HTMLElement);
  const other = KINDS.find((kind) => kind !== here) ?? here;
  const next =
    event.key === 'ArrowDown'
      ? own[at + 1]
      : event.key === 'ArrowUp'
        ? own[at - 1]
        : event.key === (here === 'done' ? 'ArrowRight' : 'ArrowLeft')
          ? buttons(other)[at]
          : undefined;
  if (next === undefined) return;
  event.preventDefault();
  next.focus();
}
