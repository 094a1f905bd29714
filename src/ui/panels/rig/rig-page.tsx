'use client';

import dynamic from 'next/dynamic';
import { RIG_MENU_WORDS } from '#words/rig-pages.ts';
import { KIT_WORDS } from '#words/screens.ts';
import { PageFrame } from '../../kit/page-frame.tsx';
import { Banner } from '../banner.tsx';
import type { RigPage as Page } from './rig-banner.tsx';

const loading = () => (
  <PageFrame title={RIG_MENU_WORDS.rig} banner={<Banner name={RIG_MENU_WORDS.rig} />}>
    <p className="text-soft">{KIT_WORDS.loading}</p>
  </PageFrame>
);

// In the browser only: a rig lives there, and without a network its page is not even made for it.
const PAGES = {
  sheet: dynamic(() => import('./sheet-page.tsx').then((module) => module.SheetPage), { ssr: false, loading }),
  'lists-in': dynamic(() => import('../lists-in/lists-in-page.tsx').then((module) => module.ListsInPage), {
    ssr: false,
    loading,
  }),
  'sheets-out': dynamic(() => import('../sheets-out/sheets-out-page.tsx').then((module) => module.SheetsOutPage), {
    ssr: false,
    loading,
  }),
} as const;

/** One of the pages of the rig in the address. */
export function RigPage({ page }: { readonly page: Page }) {
  const Chosen = PAGES[page];
  return <Chosen />;
}
