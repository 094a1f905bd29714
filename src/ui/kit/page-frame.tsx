import type { ReactNode } from 'react';
import { KIT_WORDS } from '#words/screens.ts';
import { joinClasses } from './join-classes.ts';
import { PageTitle } from './page-title.tsx';

export interface PageFrameProps {
  /** The page's title for the browser. */
  readonly title: string;
  /** What stands in the banner: the name of the page, its menu, who is signed in. */
  readonly banner: ReactNode;
  readonly children: ReactNode;
  /** `reading` keeps lines short; `full` gives the whole width and lays `children` out in a column of the window's height. */
  readonly width?: 'reading' | 'full';
}

/** A page with its landmarks: a link past the banner, the banner, and the main part. */
export function PageFrame({ title, banner, children, width = 'reading' }: PageFrameProps) {
  const full = width === 'full';
  return (
    <div className={full ? 'flex h-dvh flex-col' : 'flex min-h-dvh flex-col'}>
      <PageTitle title={title} />
      <a
        href="#main"
        className="sr-only focus:not-sr-only focus:absolute focus:top-1 focus:left-1 focus:z-10 focus:bg-sheet focus:p-2"
      >
        {KIT_WORDS.skip}
      </a>
      <header className="border-b border-rule-strong px-4 pt-3 pb-2 sm:px-5">{banner}</header>
      <main
        id="main"
        tabIndex={-1}
        className={joinClasses(
          'flex-1 outline-none',
          full ? 'flex min-h-0 flex-col' : 'mx-auto w-full max-w-4xl px-4 py-6 sm:px-5',
        )}
      >
        {children}
      </main>
    </div>
  );
}
