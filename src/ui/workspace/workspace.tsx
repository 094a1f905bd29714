import { useMemo } from 'react';
import { RIG_MENU_WORDS } from '#words/rig-pages.ts';
import { KIT_WORDS } from '#words/screens.ts';
import { useMe } from '../kit/data/use-me.ts';
import { useRig } from '../kit/data/use-rigs.ts';
import { PageFrame } from '../kit/page-frame.tsx';
import { StayLink } from '../kit/stay-link.tsx';
import { LINK_CLASSES } from '../kit/text-link.tsx';
import { useOpenRig } from '../live/open-rig.tsx';
import { rigPath } from '../panels/rig/rig-address.ts';
import { RigBanner } from '../panels/rig/rig-banner.tsx';
import { SavedHere } from '../panels/rig/saved-here.tsx';
import { PeopleHere } from './people-here.tsx';
import { SheetScreen } from './sheet-screen.tsx';
import { keepOnDevice } from './view-keeper.ts';

/** The page of a rig’s sheet: whose and what it is, who is here, whether it is saved, and the sheet. */
export function Workspace({ rigId }: { readonly rigId: string }) {
  const rig = useRig(rigId).value;
  const user = useMe().value?.user?.id ?? '';
  const store = useOpenRig();
  const keeper = useMemo(() => keepOnDevice(`columns:${user}`), [user]);
  const aside = (
    <>
      {store === undefined ? null : <PeopleHere store={store} />}
      <SavedHere />
    </>
  );
  const listsIn = (
    <StayLink className={LINK_CLASSES} href={rigPath(rigId, 'lists-in')}>
      {RIG_MENU_WORDS.pages['lists-in']}
    </StayLink>
  );
  return (
    <PageFrame
      title={rig?.name ?? RIG_MENU_WORDS.pages.sheet}
      banner={<RigBanner rig={rig} rigId={rigId} page="sheet" aside={aside} />}
      width="full"
    >
      {store === undefined ? (
        <p className="px-5 py-4 text-soft">{KIT_WORDS.loading}</p>
      ) : (
        <SheetScreen store={store} keeper={keeper} listsIn={listsIn} />
      )}
    </PageFrame>
  );
}
