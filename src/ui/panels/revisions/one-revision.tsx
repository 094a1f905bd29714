import type { Finding } from '#engine/model/finding.ts';
import type { Rig } from '#engine/model/rig.ts';
import { blockerKey } from '#wire/blocker-key.ts';
import type { RigRevisionSummary } from '#wire/record.ts';
import type { RigSummary } from '#wire/rigs.ts';
import { findingSentence } from '#words/findings.ts';
import { revisionFacts, shortHash, REVISIONS_WORDS as words } from '#words/revisions.ts';
import { useFrozenFindings, useFrozenRig } from '../../kit/data/use-revision.ts';
import { Mark } from '../../kit/mark.tsx';
import { Message } from '../../kit/message.tsx';
import { PrintHead } from '../../print/print-head.tsx';
import { ShowMore, useShown } from '../../print/show-more.tsx';
import { Asked } from '../library/asked.tsx';
import { Part } from '../part.tsx';
import { BackToList } from './back-to-list.tsx';
import { Hash } from './revision-row.tsx';
import { UnitTable } from './unit-table.tsx';

export interface OneRevisionProps {
  readonly rig: RigSummary;
  readonly revisions: readonly RigRevisionSummary[];
  readonly number: number;
}

/** One revision to be read: what the check found on that day, who accepted what, and its units. */
export function OneRevision({ rig, revisions, number }: OneRevisionProps) {
  const revision = revisions.find((each) => each.number === number);
  const frozen = useFrozenRig(rig.id, number);
  const findings = useFrozenFindings(rig.id, number);
  if (revision === undefined) {
    return (
      <div className="flex flex-col gap-3">
        <Message severity="caution" said={{ what: words.gone(number) }} />
        <BackToList />
      </div>
    );
  }
  const facts = revisionFacts(revision);
  return (
    <div className="flex flex-col gap-5">
      <PrintHead lines={[words.revision(number), `${rig.name} · ${shortHash(revision.hash)}`, facts]} />
      <div className="flex flex-col gap-1 print:hidden">
        <div className="flex flex-wrap items-baseline gap-x-4">
          <h2 className="text-title">{words.revision(number)}</h2>
          <BackToList />
        </div>
        <p className="text-large [overflow-wrap:anywhere]">{revision.note === '' ? words.noNote : revision.note}</p>
        <p className="text-soft">
          {facts} · <Hash hash={revision.hash} />
        </p>
      </div>
      <Asked answer={frozen}>
        {(was) => (
          <>
            <Part title={words.findings}>
              <Asked answer={findings}>
                {(all) => <Findings rig={was} findings={all} accepted={revision.accepted} />}
              </Asked>
            </Part>
            <UnitTable rig={was} number={number} />
          </>
        )}
      </Asked>
    </div>
  );
}

interface FindingsProps {
  /** As it was then: it names the units. */
  readonly rig: Rig;
  readonly findings: readonly Finding[];
  readonly accepted: RigRevisionSummary['accepted'];
}

function Findings({ rig, findings, accepted }: FindingsProps) {
  const { shown, onMore } = useShown(findings.length);
  if (findings.length === 0) return <p className="py-2">{words.noFindings}</p>;
  const by = new Map(accepted.map((each) => [each.key, each.by] as const));
  return (
    <>
      <ul className="py-2">
        {findings.slice(0, shown).map((finding) => {
          const name = by.get(blockerKey(finding.key));
          return (
            <li key={finding.key} className="flex gap-2 py-0.5 [overflow-wrap:anywhere]">
              <Mark severity={finding.severity} />
              <span>
                {findingSentence(finding, rig)}
                {name === undefined ? null : <strong className="font-medium"> ({words.acceptedBy(name)})</strong>}
              </span>
            </li>
          );
        })}
      </ul>
      <ShowMore shown={shown} all={findings.length} onMore={onMore} />
    </>
  );
}
