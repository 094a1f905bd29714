'use client';

import type { ReactNode } from 'react';
import { PageFrame } from '../../kit/page-frame.tsx';
import { Banner } from '../banner.tsx';
import { PlainHttpNotice } from '../plain-http-notice.tsx';

/** A page with one short form about one's account. */
export function AccountPage({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <PageFrame title={title} banner={<Banner name={title} />}>
      <div className="flex max-w-md flex-col gap-5">
        <PlainHttpNotice />
        {children}
      </div>
    </PageFrame>
  );
}
