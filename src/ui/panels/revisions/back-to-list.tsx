import { usePathname } from 'next/navigation';
import { REVISIONS_WORDS } from '#words/revisions.ts';
import { StayLink } from '../../kit/stay-link.tsx';
import { LINK_CLASSES } from '../../kit/text-link.tsx';

/** The way from one or two revisions to all of them. */
export function BackToList() {
  return (
    <StayLink className={LINK_CLASSES} href={usePathname()}>
      {REVISIONS_WORDS.all}
    </StayLink>
  );
}
