import { useState } from 'react';
import { KIT_WORDS } from '#words/screens.ts';
import { LinkButton } from '../kit/link-button.tsx';
import { usePrinting } from './use-printing.ts';

const FIRST = 100;
const MORE = 500;

/** How many of `all` are drawn: the first hundred, more when asked, every one on paper; and the button that asks. */
export function useShown(all: number): { readonly shown: number; readonly onMore: () => void } {
  const printing = usePrinting();
  const [shown, setShown] = useState(FIRST);
  return { shown: printing ? all : Math.min(shown, all), onMore: () => setShown(shown + MORE) };
}

export interface ShowMoreProps {
  readonly shown: number;
  readonly all: number;
  readonly onMore: () => void;
}

/** Draws more of a long list; nothing once all of it is there. */
export function ShowMore({ shown, all, onMore }: ShowMoreProps) {
  if (shown >= all) return null;
  return (
    <LinkButton className="py-2 print:hidden" onClick={onMore}>
      {KIT_WORDS.showMore(Math.min(MORE, all - shown), all)}
    </LinkButton>
  );
}
