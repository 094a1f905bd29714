import { RIG_MENU_WORDS as words } from '#words/rig-pages.ts';
import { StayLink } from '../../kit/stay-link.tsx';
import { LINK_CLASSES } from '../../kit/text-link.tsx';
import { rigPath } from './rig-address.ts';

/** The way from a unit that is open on another page to its row: the sheet begins at the unit one was at last. */
export function ToSheet({ rigId }: { readonly rigId: string }) {
  return (
    <StayLink className={LINK_CLASSES} href={rigPath(rigId, 'sheet')}>
      {words.toRow}
    </StayLink>
  );
}
