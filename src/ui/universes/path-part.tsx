import { useMemo } from 'react';
import type { Fixture } from '#engine/model/fixture.ts';
import { unitPath } from '#engine/network/runs/unit-path.ts';
import { PATH_WORDS, pathLines } from '#words/unit-path.ts';
import type { RigStore } from '../live/rig-store.ts';
import { useCalmRig } from '../live/use-calm-rig.ts';

export interface PathPartProps {
  readonly store: RigStore;
  readonly fixture: Fixture;
}

/** How the data comes to a unit, from its universe to its place on its run, as far as anybody has said. */
export function PathPart({ store, fixture }: PathPartProps) {
  const rig = useCalmRig(store);
  const lines = useMemo(() => pathLines(unitPath(rig, fixture)), [rig, fixture]);
  if (lines.length === 0) return null;
  return (
    <section aria-label={PATH_WORDS.title}>
      <h3 className="text-name">{PATH_WORDS.title}</h3>
      <dl className="grid grid-cols-[auto_1fr] gap-x-4">
        {lines.map(({ name, text }) => (
          <div key={name} className="contents">
            <dt className="text-soft">{name}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
