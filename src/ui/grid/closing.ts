import type { Editing } from './sheet.ts';
import type { Onward } from './sheet-actions.ts';

/** How a key closes an open cell. */
export type Closing = 'leave' | { readonly scope: 'cell' | 'selection'; readonly onward: Onward };

export interface ClosingKey {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly shiftKey: boolean;
}

const ARROWS: Readonly<Record<string, Onward>> = {
  ArrowUp: 'up',
  ArrowDown: 'down',
  ArrowLeft: 'left',
  ArrowRight: 'right',
};

/** What a key does to an open cell; undefined while it only edits the text. Arrows leave a cell that typing opened. */
export function closingOf(press: ClosingKey, how: Editing['how']): Closing | undefined {
  const { key, shiftKey } = press;
  if (key === 'Escape') return 'leave';
  if (key === 'Tab') return { scope: 'cell', onward: shiftKey ? 'left' : 'right' };
  if (key === 'Enter' && (press.ctrlKey || press.metaKey)) return { scope: 'selection', onward: 'stay' };
  if (key === 'Enter') return { scope: 'cell', onward: shiftKey ? 'up' : 'down' };
  const onward = how === 'replace' && !shiftKey ? ARROWS[key] : undefined;
  return onward === undefined ? undefined : { scope: 'cell', onward };
}
