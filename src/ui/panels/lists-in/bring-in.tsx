import { useMutation } from '@tanstack/react-query';
import { useMemo, useState } from 'react';
import { randomId } from '#base/random-id.ts';
import { rowsOf } from '#base/table.ts';
import type { Layout } from '#engine/list/layout.ts';
import type { FixtureList } from '#engine/list/read-list.ts';
import type { Rig } from '#engine/model/rig.ts';
import { importPlan } from '#exchange/csv/import-plan.ts';
import { rememberMapping } from '#exchange/csv/mapping-memory.ts';
import { LISTS_IN_WORDS } from '#words/lists-in.ts';
import { Button } from '../../kit/button.tsx';
import { useTRPC } from '../../kit/data/trpc.tsx';
import { Message } from '../../kit/message.tsx';
import { goTo } from '../../kit/stay-link.tsx';
import { useCanEdit, useOpenRig } from '../../live/open-rig.tsx';
import { rigPath } from '../rig/rig-address.ts';
import { countTaken } from './line-choice.ts';

export interface BringInProps {
  readonly list: FixtureList;
  /** Source lines that are not brought in. */
  readonly leftOut: ReadonlySet<number>;
  readonly layout: Layout;
  readonly rigId: string;
  readonly crewId: string;
}

/** Says how much there is and brings it in: one edit, after which the sheet is shown. */
export function BringIn({ list, leftOut, layout, rigId, crewId }: BringInProps) {
  const trpc = useTRPC();
  const store = useOpenRig();
  const canEdit = useCanEdit();
  const [refused, setRefused] = useState(false);
  const remember = useMutation(trpc.listMappings.remember.mutationOptions());
  const counts = useMemo(() => countTaken(list, leftOut), [list, leftOut]);
  const bringIn = () => {
    if (store === undefined) return;
    const rig = store.rig();
    const done = store.apply(importPlan(rig, list, randomId, orderAfter(rig), leftOut));
    if (!done.ok) return setRefused(true);
    const mapping = rememberMapping(layout);
    // The list is in whether or not the crew's memory of its columns is.
    if (mapping) {
      const { key, meanings, blankPosition } = mapping;
      remember.mutate({ crewId, key, mapping: { key, meanings: [...meanings], blankPosition } });
    }
    goTo(rigPath(rigId, 'sheet'));
  };
  return (
    <div className="sticky top-0 z-1 flex flex-col gap-2 border-b border-rule-strong bg-paper py-2">
      <div className="flex flex-wrap items-center gap-x-4 gap-y-2">
        <Button look="main" onClick={bringIn} disabled={counts.fixtures === 0 || !canEdit}>
          {LISTS_IN_WORDS.bringIn(counts.fixtures)}
        </Button>
        <p role="status">{LISTS_IN_WORDS.counts(counts)}</p>
        <p className="text-soft max-sm:hidden">{LISTS_IN_WORDS.undoAbout}</p>
      </div>
      {list.fixtures === 0 ? <p className="text-caution">{LISTS_IN_WORDS.nothingToBringIn}</p> : null}
      {canEdit ? null : <p className="text-caution">{LISTS_IN_WORDS.notReady}</p>}
      {refused ? <Message severity="blocker" said={LISTS_IN_WORDS.notBroughtIn} /> : null}
    </div>
  );
}

/** Where the first row goes so that the list stands after what is there. */
function orderAfter(rig: Rig): number {
  let last = 0;
  for (const { order } of rowsOf(rig.fixtures)) last = Math.max(last, order);
  return Math.floor(last) + 1;
}
