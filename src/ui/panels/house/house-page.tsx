import type { RigSummary } from '#wire/rigs.ts';
import { HOUSE_WORDS } from '#words/house.ts';
import { KIT_WORDS } from '#words/screens.ts';
import { PageFrame } from '../../kit/page-frame.tsx';
import { useOpenRig } from '../../live/open-rig.tsx';
import { RigBanner } from '../rig/rig-banner.tsx';
import { SavedHere } from '../rig/saved-here.tsx';
import { House } from './house.tsx';

/** What is written down of the place itself: positions, outlets, circuits, stock, people. */
export function HousePage({ rig }: { readonly rig: RigSummary }) {
  const store = useOpenRig();
  return (
    <PageFrame
      title={`${HOUSE_WORDS.title} · ${rig.name}`}
      banner={<RigBanner rig={rig} rigId={rig.id} page="house" aside={<SavedHere />} />}
      width="wide"
    >
      {store === undefined ? (
        <p className="text-soft">{KIT_WORDS.loading}</p>
      ) : (
        <House store={store} rigId={rig.id} rigName={rig.name} />
      )}
    </PageFrame>
  );
}
