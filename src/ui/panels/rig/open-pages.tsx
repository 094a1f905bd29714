import { usePathname } from 'next/navigation';
import { NOT_FOUND } from '#words/screens.ts';
import { Workspace } from '../../workspace/workspace.tsx';
import { ListsInPage } from '../lists-in/lists-in-page.tsx';
import { Notice } from '../notice.tsx';
import { SheetsOutPage } from '../sheets-out/sheets-out-page.tsx';
import { rigAddress } from './rig-address.ts';

/** The page that the address names, of a rig that stays open while one moves between its pages. */
export function OpenPages() {
  const { rigId, page } = rigAddress(usePathname());
  switch (page) {
    case 'sheet':
      return <Workspace key={rigId} rigId={rigId} />;
    case 'lists-in':
      return <ListsInPage key={rigId} rigId={rigId} />;
    case 'sheets-out':
      return <SheetsOutPage rigId={rigId} />;
    default:
      return <Notice severity="caution" said={NOT_FOUND} />;
  }
}
