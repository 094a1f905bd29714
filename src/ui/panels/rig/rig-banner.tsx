import type { ReactNode } from 'react';
import type { RigSummary } from '#wire/rigs.ts';
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
  const words = RIG_PAGES.filter((each) => each !== 'lists-in' || rig?.role !== 'reader').map((each) => ({
    label: RIG_MENU_WORDS.pages[each],
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
