'use client';

import { usePathname } from 'next/navigation';
import type { ReactNode } from 'react';
import type { Me } from '#wire/me.ts';
import { SIGN_IN_WORDS, SIGN_UP_WORDS, SIGNED_OUT } from '#words/account.ts';
import { KIT_WORDS } from '#words/screens.ts';
import { saidOf } from '../kit/data/unreachable.ts';
import { useMe } from '../kit/data/use-me.ts';
import { Message } from '../kit/message.tsx';
import { TextLink } from '../kit/text-link.tsx';
import { withReturn } from './account/path-after.ts';

export interface SignedInProps {
  readonly children: (user: NonNullable<Me['user']>) => ReactNode;
}

/** Shows its children to whoever is signed in, and the way in to others. */
export function SignedIn({ children }: SignedInProps) {
  const me = useMe();
  const path = usePathname();
  if (me.error !== null) return <Message severity="blocker" said={saidOf(me.error)} />;
  if (me.value === undefined) return <p className="text-soft">{KIT_WORDS.loading}</p>;
  if (me.value.user !== null) return children(me.value.user);
  return (
    <Message severity="caution" said={SIGNED_OUT}>
      <p className="flex flex-wrap gap-4">
        <TextLink href={withReturn('/sign-in', path)}>{SIGN_IN_WORDS.title}</TextLink>
        <TextLink href={withReturn('/sign-up', path)}>{SIGN_UP_WORDS.title}</TextLink>
      </p>
    </Message>
  );
}
