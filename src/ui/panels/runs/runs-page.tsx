import type { RigSummary } from '#wire/rigs.ts';
import { RUNS_WORDS } from '#words/runs.ts';
import { KIT_WORDS } from '#words/screens.ts';
import { PageFrame } from '../../kit/page-frame.tsx';
import { useOpenRig } from '../../live/open-rig.tsx';
import { RigBanner } from '../rig/rig-banner.tsx';
import { SavedHere } from '../rig/saved-here.tsx';
import { Runs } from './runs.tsx';

/** The data lines of a rig: what is on each, how long and how loaded it is. */
export function RunsPage({ rig }: { readonly rig: RigSummary }) {
  const store = useOpenRig();
  return (
    <PageFrame
      title={`${RUNS_WORDS.title} · ${rig.name}`}
      banner={<RigBanner rig={rig} rigId={rig.id} page="runs" aside={<SavedHere />} />}
      width="full"
    >
      {store === undefined ? (
        <p className="px-5 py-4 text-soft">{KIT_WORDS.loading}</p>
      ) : (
        <Runs store={store} rigId={rig.id} />
      )}
    </PageFrame>
  );
}
