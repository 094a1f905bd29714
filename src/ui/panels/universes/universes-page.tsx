import type { RigSummary } from '#wire/rigs.ts';
import { KIT_WORDS } from '#words/screens.ts';
import { UNIVERSE_PAGE_WORDS } from '#words/slots.ts';
import { PageFrame } from '../../kit/page-frame.tsx';
import { useOpenRig } from '../../live/open-rig.tsx';
import { RigBanner } from '../rig/rig-banner.tsx';
import { SavedHere } from '../rig/saved-here.tsx';
import { Universes } from './universes.tsx';

/** What every slot of every universe of a rig does, one universe at a time. */
export function UniversesPage({ rig }: { readonly rig: RigSummary }) {
  const store = useOpenRig();
  return (
    <PageFrame
      title={`${UNIVERSE_PAGE_WORDS.title} · ${rig.name}`}
      banner={<RigBanner rig={rig} rigId={rig.id} page="universes" aside={<SavedHere />} />}
      width="full"
    >
      {store === undefined ? (
        <p className="px-5 py-4 text-soft">{KIT_WORDS.loading}</p>
      ) : (
        <Universes store={store} rigId={rig.id} />
      )}
    </PageFrame>
  );
}
