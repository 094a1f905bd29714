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
  /**
   * `reading` keeps lines short, `wide` takes the width for tables, and `full` takes it without a margin and lays
   * `children` out in a column of the window's height.
   */
  readonly width?: keyof typeof WIDTHS;
}

const WIDTHS = {
  reading: 'w-full max-w-4xl px-4 py-6 sm:px-5',
  wide: 'w-full px-4 py-5 sm:px-5',
  full: 'flex min-h-0 flex-col',
} as const;

/** A page with its landmarks: a link past the banner, the banner, and the main part. */
export function PageFrame({ title, banner, children, width = 'reading' }: PageFrameProps) {
  return (
    <div className={width === 'full' ? 'flex h-dvh flex-col' : 'flex min-h-dvh flex-col'}>
      <PageTitle title={title} />
      <a
        href="#main"
        className="sr-only focus:not-sr-only focus:absolute focus:top-1 focus:left-1 focus:z-10 focus:bg-sheet focus:p-2"
      >
        {KIT_WORDS.skip}
      </a>
      <header className="print:hidden border-b border-rule-strong px-4 pt-3 pb-2 sm:px-5">{banner}</header>
      <main id="main" tabIndex={-1} className={joinClasses('flex-1 outline-none', WIDTHS[width])}>
        {children}
      </main>
    </div>
  );
}
