import type { RigSummary } from '#wire/rigs.ts';
import { NETWORK_WORDS as words } from '#words/network.ts';
import { KIT_WORDS } from '#words/screens.ts';
import { PageFrame } from '../../kit/page-frame.tsx';
import { useOpenRig } from '../../live/open-rig.tsx';
import { RigBanner } from '../rig/rig-banner.tsx';
import { SavedHere } from '../rig/saved-here.tsx';
import { Network } from './network.tsx';

/** How the universes of a rig travel, and the devices they come out of. */
export function NetworkPage({ rig }: { readonly rig: RigSummary }) {
  const store = useOpenRig();
  return (
    <PageFrame
      title={`${words.title} · ${rig.name}`}
      banner={<RigBanner rig={rig} rigId={rig.id} page="network" aside={<SavedHere />} />}
      width="wide"
    >
      {store === undefined ? (
        <p className="text-soft">{KIT_WORDS.loading}</p>
      ) : (
        <Network store={store} rigId={rig.id} />
      )}
    </PageFrame>
  );
}
