'use client';

import type { Severity } from '#engine/model/finding.ts';
import { NOTICE_WORDS } from '#words/screens.ts';
import { LinkButton } from '../kit/link-button.tsx';
import { Message, type Said } from '../kit/message.tsx';
import { PageFrame } from '../kit/page-frame.tsx';
import { TextLink } from '../kit/text-link.tsx';
import { Banner } from './banner.tsx';

export interface NoticeProps {
  readonly severity: Severity;
  readonly said: Said & { readonly title: string };
}

/** A page that only says why there is no other, with the ways on. */
export function Notice({ severity, said }: NoticeProps) {
  return (
    <PageFrame title={said.title} banner={<Banner name={said.title} />}>
      <Message severity={severity} said={said}>
        <p className="flex flex-wrap gap-5">
          <LinkButton onClick={() => window.location.reload()}>{NOTICE_WORDS.reload}</LinkButton>
          <TextLink href="/">{NOTICE_WORDS.home}</TextLink>
        </p>
      </Message>
    </PageFrame>
  );
}
