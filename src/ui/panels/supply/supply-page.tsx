import type { RigSummary } from '#wire/rigs.ts';
import { KIT_WORDS } from '#words/screens.ts';
import { SUPPLY_WORDS } from '#words/supply.ts';
import { PageFrame } from '../../kit/page-frame.tsx';
import { useOpenRig } from '../../live/open-rig.tsx';
import { RigBanner } from '../rig/rig-banner.tsx';
import { SavedHere } from '../rig/saved-here.tsx';
import { Supply } from './supply.tsx';

/** What feeds the units of a rig, and what its positions hold, against what they may. */
export function SupplyPage({ rig }: { readonly rig: RigSummary }) {
  const store = useOpenRig();
  return (
    <PageFrame
      title={`${SUPPLY_WORDS.title} · ${rig.name}`}
      banner={<RigBanner rig={rig} rigId={rig.id} page="supply" aside={<SavedHere />} />}
      width="full"
    >
      {store === undefined ? (
        <p className="px-5 py-4 text-soft">{KIT_WORDS.loading}</p>
      ) : (
        <Supply store={store} rigId={rig.id} />
      )}
    </PageFrame>
  );
}
