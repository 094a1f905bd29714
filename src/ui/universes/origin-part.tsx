import { getRow } from '#base/table.ts';
import { differingFields } from '#engine/diff/diff-edits.ts';
import type { Fixture } from '#engine/model/fixture.ts';
import type { RigSummary } from '#wire/rigs.ts';
import { originSentence, ORIGIN_WORDS as words } from '#words/revisions.ts';
import { useFrozenRig } from '../kit/data/use-revision.ts';
import { useRigSummary } from '../live/open-rig.tsx';

/** Where a unit came from and what was changed since, in a rig that began as a revision of another; nothing in others. */
export function OriginPart({ fixture }: { readonly fixture: Fixture }) {
  const rig = useRigSummary();
  return rig?.startedFrom == null ? null : <Origin rig={rig} from={rig.startedFrom} fixture={fixture} />;
}

interface OriginProps {
  readonly rig: RigSummary;
  readonly from: NonNullable<RigSummary['startedFrom']>;
  readonly fixture: Fixture;
}

function Origin({ rig, from, fixture }: OriginProps) {
  // Its own first revision is what it began as, for ever, whatever becomes of the rig it came from.
  const first = useFrozenRig(rig.id, 1).value;
  if (first === undefined) return null;
  const was = getRow(first.fixtures, fixture.id);
  const fields = was === undefined ? undefined : differingFields(was, fixture);
  return (
    <section aria-label={words.title}>
      <p>{originSentence(from, fields)}</p>
    </section>
  );
}
