import { usePathname } from 'next/navigation';
import { NOT_FOUND } from '#words/screens.ts';
import { OpenRig } from '../../live/open-rig.tsx';
import { Workspace } from '../../workspace/workspace.tsx';
import { ListsInPage } from '../lists-in/lists-in-page.tsx';
import { Notice } from '../notice.tsx';
import { SheetsOutPage } from '../sheets-out/sheets-out-page.tsx';
import { type RigAddress, rigAddress } from './rig-address.ts';

/** The page that the address names, of a rig that stays open while one moves between its pages. */
export function OpenPages() {
  const address = rigAddress(usePathname());
  return (
    <OpenRig key={address.rigId} rigId={address.rigId}>
      <Chosen {...address} />
    </OpenRig>
  );
}

function Chosen({ rigId, page }: RigAddress) {
  switch (page) {
    case 'sheet':
      return <Workspace rigId={rigId} />;
    case 'lists-in':
      return <ListsInPage rigId={rigId} />;
    case 'sheets-out':
      return <SheetsOutPage rigId={rigId} />;
    default:
      return <Notice severity="caution" said={NOT_FOUND} />;
  }
}
