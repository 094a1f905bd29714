import { usePathname } from 'next/navigation';
import { useEffect, useRef } from 'react';
import { unreachable } from '#base/unreachable.ts';
import type { RigSummary } from '#wire/rigs.ts';
import { NOT_FOUND } from '#words/screens.ts';
import { OpenRig } from '../../live/open-rig.tsx';
import { Workspace } from '../../workspace/workspace.tsx';
import { HistoryPage } from '../history/history-page.tsx';
import { HousePage } from '../house/house-page.tsx';
import { ListsInPage } from '../lists-in/lists-in-page.tsx';
import { NetworkPage } from '../network/network-page.tsx';
import { Notice } from '../notice.tsx';
import { RestorePage } from '../restore/restore-page.tsx';
import { RevisionsPage } from '../revisions/revisions-page.tsx';
import { RunsPage } from '../runs/runs-page.tsx';
import { SheetsOutPage } from '../sheets-out/sheets-out-page.tsx';
import { SupplyPage } from '../supply/supply-page.tsx';
import { UniversesPage } from '../universes/universes-page.tsx';
import { UpkeepPage } from '../upkeep/upkeep-page.tsx';
import { type RigPage, rigAddress } from './rig-address.ts';
import { RigGate } from './rig-gate.tsx';

/** The page that the address names, of a rig that stays open while one moves between its pages. */
export function OpenPages() {
  const { rigId, page } = rigAddress(usePathname());
  useFocusOnArrival(page);
  if (page === undefined) return <Notice severity="caution" said={NOT_FOUND} />;
  return (
    <OpenRig key={rigId} rigId={rigId}>
      <RigGate rigId={rigId} page={page}>
        {(rig) => <Chosen rig={rig} page={page} />}
      </RigGate>
    </OpenRig>
  );
}

/** Whoever moves to another page by keyboard goes on there: at what the link named, in the sheet where there is one, else in the page's main part. */
function useFocusOnArrival(page: RigPage | undefined): void {
  const shown = useRef(page);
  useEffect(() => {
    if (shown.current === page) return;
    shown.current = page;
    const main = document.getElementById('main');
    const named = document.getElementById(window.location.hash.slice(1));
    const place = named ?? main?.querySelector<HTMLElement>('[role="grid"]') ?? main;
    place?.focus({ preventScroll: place !== named });
  }, [page]);
}

function Chosen({ rig, page }: { readonly rig: RigSummary; readonly page: RigPage }) {
  switch (page) {
    case 'sheet':
      return <Workspace rigId={rig.id} />;
    case 'universes':
      return <UniversesPage rig={rig} />;
    case 'runs':
      return <RunsPage rig={rig} />;
    case 'history':
      return <HistoryPage rig={rig} />;
    case 'lists-in':
      return <ListsInPage rig={rig} />;
    case 'sheets-out':
      return <SheetsOutPage rig={rig} />;
    case 'network':
      return <NetworkPage rig={rig} />;
    case 'revisions':
      return <RevisionsPage rig={rig} />;
    case 'supply':
      return <SupplyPage rig={rig} />;
    case 'house':
      return <HousePage rig={rig} />;
    case 'upkeep':
      return <UpkeepPage rig={rig} />;
    case 'restore':
      return <RestorePage rig={rig} />;
    default:
      return unreachable(page);
  }
}
