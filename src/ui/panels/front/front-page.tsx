'use client';

import { KIT_WORDS, PRODUCT } from '#words/screens.ts';
import { saidOf } from '../../kit/data/unreachable.ts';
import { useMe } from '../../kit/data/use-me.ts';
import { Message } from '../../kit/message.tsx';
import { PageFrame } from '../../kit/page-frame.tsx';
import { Banner } from '../banner.tsx';
import { PlainHttpNotice } from '../plain-http-notice.tsx';
import { MyRigs } from './my-rigs.tsx';
import { Welcome } from './welcome.tsx';

/** The job and the ways in for whoever is signed out; their rigs for whoever is signed in. */
export function FrontPage() {
  const me = useMe();
  return (
    <PageFrame title={PRODUCT} banner={<Banner name={PRODUCT} />}>
      <div className="flex flex-col gap-6">
        <PlainHttpNotice />
        {me.error === null ? null : <Message severity="blocker" said={saidOf(me.error)} />}
        {me.value === undefined && me.error === null ? <p className="text-soft">{KIT_WORDS.loading}</p> : null}
        {me.value?.user === null ? <Welcome demo={me.value.demo} /> : null}
        {me.value?.user ? <MyRigs /> : null}
      </div>
    </PageFrame>
  );
}
