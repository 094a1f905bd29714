import type { ReactNode } from 'react';
import type { RigSummary } from '#wire/rigs.ts';
import { PROPOSAL_WORDS } from '#words/proposals.ts';
import { RIG_MENU_WORDS, rigAbout } from '#words/rig-pages.ts';
import { MenuLine } from '../../kit/menu-line.tsx';
import { Banner } from '../banner.tsx';
import { RIG_PAGES, type RigPage, rigPath } from './rig-address.ts';

export interface RigBannerProps {
  /** Undefined while it is being asked for. */
  readonly rig: RigSummary | undefined;
  readonly rigId: string;
  /** Which of the rig's pages this is. */
  readonly page: RigPage;
  readonly aside?: ReactNode;
}

/** The head of every page of a rig: its name, what it is, and the line of its pages. */
export function RigBanner({ rig, rigId, page, aside }: RigBannerProps) {
  const words = RIG_PAGES.filter((each) => isOffered(each, rig)).map((each) => ({
    label: each === 'restore' && rig?.kind === 'house' ? PROPOSAL_WORDS.menu : RIG_MENU_WORDS.pages[each],
    href: rigPath(rigId, each),
  }));
  return (
    <Banner
      name={rig?.name ?? RIG_MENU_WORDS.rig}
      about={rig ? rigAbout(rig) : undefined}
      menu={<MenuLine name={RIG_MENU_WORDS.name} words={words} current={rigPath(rigId, page)} />}
      aside={aside}
    />
  );
}

/** Readers bring nothing in; only what began as another rig is put back, and only to a house does a show propose. */
function isOffered(page: RigPage, rig: RigSummary | undefined): boolean {
  if (page === 'lists-in') return rig?.role !== 'reader';
  if (page === 'restore') return rig?.kind === 'house' || (rig?.startedFrom ?? null) !== null;
  return true;
}
