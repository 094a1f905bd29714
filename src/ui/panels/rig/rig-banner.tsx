import type { ReactNode } from 'react';
import type { RigSummary } from '#wire/rigs.ts';
import { RIG_MENU_WORDS, rigAbout } from '#words/rig-pages.ts';
import { RIG_KIND_WORDS } from '#words/screens.ts';
import { MenuLine } from '../../kit/menu-line.tsx';
import { Banner } from '../banner.tsx';

export interface RigBannerProps {
  /** Undefined while it is being asked for. */
  readonly rig: RigSummary | undefined;
  readonly rigId: string;
  /** Which of the rig's pages this is. */
  readonly page: RigPage;
  readonly aside?: ReactNode;
}

export type RigPage = 'sheet' | 'lists-in' | 'sheets-out';

/** The head of every page of a rig: its name, what it is, and the line of its pages. */
export function RigBanner({ rig, rigId, page, aside }: RigBannerProps) {
  const base = `/rigs/${rigId}`;
  const hrefs: Readonly<Record<RigPage, string>> = {
    sheet: base,
    'lists-in': `${base}/lists-in`,
    'sheets-out': `${base}/sheets-out`,
  };
  const words = [
    { label: RIG_MENU_WORDS.sheet, href: hrefs.sheet },
    ...(rig?.role === 'reader' ? [] : [{ label: RIG_MENU_WORDS.listsIn, href: hrefs['lists-in'] }]),
    { label: RIG_MENU_WORDS.sheetsOut, href: hrefs['sheets-out'] },
  ];
  return (
    <Banner
      name={rig?.name ?? RIG_MENU_WORDS.rig}
      about={rig ? rigAbout(RIG_KIND_WORDS[rig.kind], rig.venueName, rig.crewName) : undefined}
      menu={<MenuLine name={RIG_MENU_WORDS.name} words={words} current={hrefs[page]} />}
      aside={aside}
    />
  );
}
