import type { ReactNode } from 'react';
import { PRODUCT } from '#words/screens.ts';
import { TextLink } from '../kit/text-link.tsx';
import { AccountButton } from './account/account-button.tsx';

export interface BannerProps {
  /** The name of the page's thing: a rig, a crew; the heading of the page. */
  readonly name: string;
  /** What it is, in a soft line beside the name. */
  readonly about?: ReactNode;
  /** The line of words below. */
  readonly menu?: ReactNode;
  /** What stands before the account: who else is here, whether it is saved. */
  readonly aside?: ReactNode;
}

/** What stands at the head of every page: its name, what it is, its menu, the way home, and the account. */
export function Banner({ name, about, menu, aside }: BannerProps) {
  return (
    <div className="flex flex-col gap-1">
      <div className="flex flex-wrap items-baseline gap-x-5 gap-y-1">
        <h1 className="min-w-0 text-title [overflow-wrap:anywhere]">{name}</h1>
        {about === undefined ? null : <div className="text-soft">{about}</div>}
        <div className="ml-auto flex flex-wrap items-center gap-x-4 gap-y-1">
          {aside}
          {name === PRODUCT ? null : <TextLink href="/">{PRODUCT}</TextLink>}
          <AccountButton />
        </div>
      </div>
      {menu}
    </div>
  );
}
