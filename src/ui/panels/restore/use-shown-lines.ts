import { useState } from 'react';
import type { RestoreLine } from '#engine/diff/restore.ts';

export type LinesView = 'open' | 'all';

export interface ShownLines {
  readonly view: LinesView;
  readonly isShown: (line: RestoreLine) => boolean;
  /** How many ticked lines are still on screen. */
  readonly ticked: number;
  readonly choose: (view: LinesView) => void;
}

/**
 * Which lines are on screen. One that is ticked, by me or by another, stays where it is until somebody asks for the open ones anew: nothing
 * moves under a thumb.
 */
export function useShownLines(lines: readonly RestoreLine[]): ShownLines {
  const tickedNow = () => new Set(lines.flatMap(({ key, state }) => (state === 'open' ? [] : [key])));
  const [view, setView] = useState<LinesView>('open');
  const [hidden, setHidden] = useState<ReadonlySet<string>>(tickedNow);
  const isShown = ({ key, state }: RestoreLine) => view === 'all' || state === 'open' || !hidden.has(key);
  return {
    view,
    isShown,
    ticked: view === 'all' ? 0 : lines.filter((line) => line.state !== 'open' && isShown(line)).length,
    choose: (next) => {
      setView(next);
      if (next === 'open') setHidden(tickedNow());
    },
  };
}
