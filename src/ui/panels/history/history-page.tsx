import type { RigSummary } from '#wire/rigs.ts';
import { HISTORY_WORDS } from '#words/history.ts';
import { KIT_WORDS } from '#words/screens.ts';
import { PageFrame } from '../../kit/page-frame.tsx';
import { useOpenRig } from '../../live/open-rig.tsx';
import { RigBanner } from '../rig/rig-banner.tsx';
import { SavedHere } from '../rig/saved-here.tsx';
import { History } from './history.tsx';

/** Who changed what in a rig, when, from what to what; and the rig as it was at any of these moments. */
export function HistoryPage({ rig }: { readonly rig: RigSummary }) {
  const store = useOpenRig();
  return (
    <PageFrame
      title={`${HISTORY_WORDS.title} · ${rig.name}`}
      banner={<RigBanner rig={rig} rigId={rig.id} page="history" aside={<SavedHere />} />}
      width="wide"
    >
      {store === undefined ? <p className="text-soft">{KIT_WORDS.loading}</p> : <History store={store} rig={rig} />}
    </PageFrame>
  );
}
