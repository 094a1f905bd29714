import type { RigSummary } from '#wire/rigs.ts';
import { REVISIONS_WORDS } from '#words/revisions.ts';
import { useRevisions } from '../../kit/data/use-revision.ts';
import { PageFrame } from '../../kit/page-frame.tsx';
import { Asked } from '../library/asked.tsx';
import { RigBanner } from '../rig/rig-banner.tsx';
import { SavedHere } from '../rig/saved-here.tsx';
import { OneRevision } from './one-revision.tsx';
import { Pair } from './pair.tsx';
import { RevisionList } from './revision-list.tsx';
import { useRevisionsPlace } from './revisions-hash.ts';

/** The revisions of a rig: all of them, one to look at, or what differs between two. */
export function RevisionsPage({ rig }: { readonly rig: RigSummary }) {
  const place = useRevisionsPlace();
  const revisions = useRevisions(rig.id);
  return (
    <PageFrame
      title={`${REVISIONS_WORDS.title} · ${rig.name}`}
      banner={<RigBanner rig={rig} rigId={rig.id} page="revisions" aside={<SavedHere />} />}
      width={place.kind === 'list' ? 'reading' : 'wide'}
    >
      <Asked answer={revisions}>
        {(all) => {
          switch (place.kind) {
            case 'one':
              return <OneRevision rig={rig} revisions={all} number={place.number} />;
            case 'pair':
              return <Pair rig={rig} revisions={all} before={place.before} after={place.after} />;
            default:
              return <RevisionList rig={rig} revisions={all} />;
          }
        }}
      </Asked>
    </PageFrame>
  );
}
