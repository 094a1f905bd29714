import type { RigSummary } from '#wire/rigs.ts';
import { PROPOSAL_WORDS } from '#words/proposals.ts';
import { RESTORE_WORDS } from '#words/restore.ts';
import { KIT_WORDS } from '#words/screens.ts';
import { PageFrame } from '../../kit/page-frame.tsx';
import { useOpenRig } from '../../live/open-rig.tsx';
import { ProposalsPart } from '../proposals/proposals-part.tsx';
import { RigBanner } from '../rig/rig-banner.tsx';
import { SavedHere } from '../rig/saved-here.tsx';
import { RestoreFrom } from './restore-from.tsx';

/** Of a show rig: what to put back so that the house is as its record says. Of a house rig: what shows propose to leave changed. */
export function RestorePage({ rig }: { readonly rig: RigSummary }) {
  const title = rig.kind === 'house' ? PROPOSAL_WORDS.title : RESTORE_WORDS.title;
  return (
    <PageFrame
      title={`${title} · ${rig.name}`}
      banner={<RigBanner rig={rig} rigId={rig.id} page="restore" aside={<SavedHere />} />}
      width="wide"
    >
      <Content rig={rig} />
    </PageFrame>
  );
}

function Content({ rig }: { readonly rig: RigSummary }) {
  const store = useOpenRig();
  if (rig.kind === 'show' && rig.startedFrom === null) return <p className="max-w-prose">{RESTORE_WORDS.none}</p>;
  if (store === undefined) return <p className="text-soft">{KIT_WORDS.loading}</p>;
  if (rig.kind === 'house') return <ProposalsPart store={store} rig={rig} />;
  return rig.startedFrom === null ? null : <RestoreFrom store={store} rig={rig} from={rig.startedFrom} />;
}
