'use client';

import dynamic from 'next/dynamic';
import { RIG_MENU_WORDS } from '#words/rig-pages.ts';
import { KIT_WORDS } from '#words/screens.ts';
import { PageFrame } from '../../kit/page-frame.tsx';
import { Banner } from '../banner.tsx';

const loading = () => (
  <PageFrame title={RIG_MENU_WORDS.rig} banner={<Banner name={RIG_MENU_WORDS.rig} />}>
    <p className="text-soft">{KIT_WORDS.loading}</p>
  </PageFrame>
);

// In the browser only: a rig lives there, and without a network its page is not even made for it.
const OpenPages = dynamic(() => import('./open-pages.tsx').then((module) => module.OpenPages), {
  ssr: false,
  loading,
});

/** The pages of the rig in the address. */
export function RigPages() {
  return <OpenPages />;
}
