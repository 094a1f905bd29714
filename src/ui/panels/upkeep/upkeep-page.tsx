import type { RigSummary } from '#wire/rigs.ts';
import { KIT_WORDS } from '#words/screens.ts';
import { UPKEEP_WORDS } from '#words/upkeep.ts';
import { PageFrame } from '../../kit/page-frame.tsx';
import { useOpenRig } from '../../live/open-rig.tsx';
import { RigBanner } from '../rig/rig-banner.tsx';
import { SavedHere } from '../rig/saved-here.tsx';
import { Upkeep } from './upkeep.tsx';

/** What is wrong, what was done about it, and what has to go back. */
export function UpkeepPage({ rig }: { readonly rig: RigSummary }) {
  const store = useOpenRig();
  return (
    <PageFrame
      title={`${UPKEEP_WORDS.title} · ${rig.name}`}
      banner={<RigBanner rig={rig} rigId={rig.id} page="upkeep" aside={<SavedHere />} />}
      width="full"
    >
      {store === undefined ? (
        <p className="px-5 py-4 text-soft">{KIT_WORDS.loading}</p>
      ) : (
        <Upkeep store={store} rigId={rig.id} rigName={rig.name} />
      )}
    </PageFrame>
  );
}
