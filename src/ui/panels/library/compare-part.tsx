import { useMemo, useState } from 'react';
import type { FixtureType } from '#engine/model/fixture-type.ts';
import { compareTypes, saysTheSame } from '#engine/type/compare-types.ts';
import type { TypeRevisionSummary } from '#wire/library.ts';
import { COMPARE_WORDS } from '#words/library.ts';
import { sayMoment } from '#words/screens.ts';
import { Select } from '../../kit/select.tsx';
import { Part } from '../part.tsx';
import { Asked } from './asked.tsx';
import { Comparison } from './comparison.tsx';
import { useRevision } from './use-library.ts';

export interface ComparePartProps {
  readonly crewId: string;
  readonly typeId: string;
  /** Newest first; at least two. */
  readonly revisions: readonly TypeRevisionSummary[];
}

/** Two revisions of a type, and what differs between them slot by slot; at first the last two. */
export function ComparePart({ crewId, typeId, revisions }: ComparePartProps) {
  const newest = String(revisions[0]?.number ?? 0);
  const [before, setBefore] = useState<string>();
  const [after, setAfter] = useState<string>();
  const left = before ?? String(revisions[1]?.number ?? newest);
  const right = after ?? newest;
  const choices = revisions.map(({ number, at }) => ({
    value: String(number),
    label: COMPARE_WORDS.choice(number, sayMoment(at)),
  }));
  return (
    <Part title={COMPARE_WORDS.title}>
      <div className="flex flex-wrap gap-4 py-2">
        <Select label={COMPARE_WORDS.before} choices={choices} value={left} onChoose={setBefore} />
        <Select label={COMPARE_WORDS.after} choices={choices} value={right} onChoose={setAfter} />
      </div>
      {left === right ? (
        <p>{COMPARE_WORDS.same}</p>
      ) : (
        <Both crewId={crewId} typeId={typeId} before={Number(left)} after={Number(right)} />
      )}
    </Part>
  );
}

interface BothProps {
  readonly crewId: string;
  readonly typeId: string;
  readonly before: number;
  readonly after: number;
}

function Both({ crewId, typeId, before, after }: BothProps) {
  const left = useRevision({ crewId, typeId, number: before });
  const right = useRevision({ crewId, typeId, number: after });
  return (
    <Asked answer={left}>
      {(old) => <Asked answer={right}>{(now) => <Differences before={old.type} after={now.type} />}</Asked>}
    </Asked>
  );
}

function Differences({ before, after }: { readonly before: FixtureType; readonly after: FixtureType }) {
  const comparison = useMemo(() => compareTypes(before, after), [before, after]);
  if (saysTheSame(comparison)) return <p>{COMPARE_WORDS.equal}</p>;
  if (comparison.unseen) return <p className="max-w-prose">{COMPARE_WORDS.unseen}</p>;
  return <Comparison before={before} after={after} comparison={comparison} />;
}
