import { type ReactNode, useSyncExternalStore } from 'react';
import type { Rig } from '#engine/model/rig.ts';
import type { RigRevisionSummary } from '#wire/record.ts';
import type { RigSummary } from '#wire/rigs.ts';
import { revisionChoice, REVISIONS_WORDS as words } from '#words/revisions.ts';
import { KIT_WORDS } from '#words/screens.ts';
import { Button } from '../../kit/button.tsx';
import { useFrozenRig } from '../../kit/data/use-revision.ts';
import { Select } from '../../kit/select.tsx';
import { useOpenRig } from '../../live/open-rig.tsx';
import type { RigStore } from '../../live/rig-store.ts';
import { useCalmRig } from '../../live/use-calm-rig.ts';
import { CompareView } from '../compare/compare-view.tsx';
import { Asked } from '../library/asked.tsx';
import { BackToList } from './back-to-list.tsx';
import { replacePlace, type Side } from './revisions-hash.ts';

export interface PairProps {
  readonly rig: RigSummary;
  /** Newest first. */
  readonly revisions: readonly RigRevisionSummary[];
  readonly before: Side;
  readonly after: Side;
}

/** Two revisions of a rig, or one and the rig as it is edited, and what differs between them. */
export function Pair({ rig, revisions, before, after }: PairProps) {
  const choose = (pair: { readonly before?: string; readonly after?: string }) =>
    replacePlace({ kind: 'pair', before: sideOf(pair.before, before), after: sideOf(pair.after, after) });
  const choices = [
    { value: 'now', label: words.nowChoice },
    ...revisions.map((revision) => ({ value: String(revision.number), label: revisionChoice(revision) })),
  ];
  return (
    <div className="flex flex-col gap-4">
      <div className="flex flex-wrap items-baseline gap-x-4 gap-y-2 print:hidden">
        <h2 className="text-name">{words.compare}</h2>
        <BackToList />
      </div>
      <div className="grid max-w-4xl grid-cols-[1fr_1fr_auto] items-end gap-3 max-sm:grid-cols-2 print:hidden">
        <Select
          label={words.from}
          choices={choices}
          value={String(before)}
          onChoose={(side) => choose({ before: side })}
        />
        <Select label={words.to} choices={choices} value={String(after)} onChoose={(side) => choose({ after: side })} />
        <Button className="max-sm:col-span-2" onClick={() => choose({ before: String(after), after: String(before) })}>
          {words.swap}
        </Button>
      </div>
      {before === after ? (
        <p>{words.same}</p>
      ) : (
        <SideOf rigId={rig.id} side={before}>
          {(old) => (
            <SideOf rigId={rig.id} side={after}>
              {(now) => (
                <CompareView
                  before={old}
                  after={now}
                  beforeName={nameOf(before)}
                  afterName={nameOf(after)}
                  rigName={rig.name}
                />
              )}
            </SideOf>
          )}
        </SideOf>
      )}
    </div>
  );
}

const nameOf = (side: Side) => (side === 'now' ? words.now : words.named(side));
const sideOf = (chosen: string | undefined, side: Side): Side =>
  chosen === undefined ? side : chosen === 'now' ? 'now' : Number(chosen);

interface SideOfProps {
  readonly rigId: string;
  readonly side: Side;
  readonly children: (rig: Rig) => ReactNode;
}

function SideOf({ rigId, side, children }: SideOfProps) {
  const store = useOpenRig();
  if (side !== 'now')
    return (
      <Frozen key={side} rigId={rigId} number={side}>
        {children}
      </Frozen>
    );
  if (store === undefined) return <p className="text-soft">{KIT_WORDS.loading}</p>;
  return <Live store={store}>{children}</Live>;
}

interface FrozenProps {
  readonly rigId: string;
  readonly number: number;
  readonly children: (rig: Rig) => ReactNode;
}

function Frozen({ rigId, number, children }: FrozenProps) {
  return <Asked answer={useFrozenRig(rigId, number)}>{children}</Asked>;
}

/** The rig as it is edited, drawn anew while it is. */
function Live({ store, children }: { readonly store: RigStore; readonly children: (rig: Rig) => ReactNode }) {
  const rig = useCalmRig(store);
  const arrived = useSyncExternalStore(store.subscribeLink, store.hasArrived);
  return arrived ? children(rig) : <p className="text-soft">{KIT_WORDS.loading}</p>;
}
