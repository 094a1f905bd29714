import { type ReactNode, useMemo } from 'react';
import { SLOTS } from '#engine/model/address.ts';
import type { Finding } from '#engine/model/finding.ts';
import { EMPTY_RIG } from '#engine/model/rig.ts';
import { RIBBONS_WORDS as words } from '#words/ribbons.ts';
import { RibbonList, type RibbonListProps } from './ribbon-list.tsx';

export interface RibbonsViewProps extends RibbonListProps {
  /** The way to the other view. */
  readonly views: ReactNode;
}

/** All universes at once: what is used and free in them, and their ribbons. */
export function RibbonsView({ views, ...list }: RibbonsViewProps) {
  const { store, choices, rig } = list;
  const used = choices.filter(({ freeSlots }) => freeSlots < SLOTS);
  const free = used.reduce((sum, { freeSlots }) => sum + freeSlots, 0);
  const unpatched = useMemo(() => (rig === EMPTY_RIG ? 0 : countUnpatched(store.findings())), [rig, store]);
  return (
    <div className="flex min-h-0 min-w-0 flex-1 flex-col">
      <div className="flex flex-wrap items-baseline gap-x-4 gap-y-1 px-4 py-2 sm:px-5">
        <h2 className="sr-only">{words.all}</h2>
        {views}
        <p className="text-soft">{words.summary(used.length, free, unpatched)}</p>
      </div>
      <RibbonList {...list} />
    </div>
  );
}

function countUnpatched(findings: readonly Finding[]): number {
  const unpatched = findings.filter(({ rule }) => rule === 'unpatched');
  return new Set(unpatched.flatMap(({ fixtures }) => fixtures)).size;
}
