'use client';

import dynamic from 'next/dynamic';
import { DRAFT_SCREEN_WORDS } from '#words/draft-screen.ts';
import { KIT_WORDS } from '#words/screens.ts';
import { PageFrame } from '../kit/page-frame.tsx';
import { Banner } from '../panels/banner.tsx';

const loading = () => (
  <PageFrame title={DRAFT_SCREEN_WORDS.title} banner={<Banner name={DRAFT_SCREEN_WORDS.title} />}>
    <p className="text-soft">{KIT_WORDS.loading}</p>
  </PageFrame>
);

// In the browser only: a draft lives there, with its copy on this device.
const OpenDraft = dynamic(() => import('./open-draft.tsx').then((module) => module.OpenDraft), { ssr: false, loading });

/** The page of the draft in the address. */
export function DraftPage() {
  return <OpenDraft />;
}
