import type { Rig } from '#engine/model/rig.ts';
import type { LastHad } from '#wire/handovers.ts';
import { RECEIVE_WORDS as words } from '#words/handovers.ts';
import { useFrozenRig } from '../../kit/data/use-revision.ts';
import { CompareView } from '../compare/compare-view.tsx';
import { Asked } from '../library/asked.tsx';
import { Part } from '../part.tsx';

interface SinceProps {
  /** Where the receiving crew holds what it last had of the rig; undefined when it had nothing. */
  readonly last: LastHad | undefined;
  readonly offered: Rig;
  readonly rigName: string;
}

/** What differs between what the receiving crew last had of a rig and what it is offered. */
export function SinceLastHad({ last, offered, rigName }: SinceProps) {
  return (
    <Part title={words.since}>
      {last === undefined ? (
        <p className="py-2 text-soft">{words.sinceNever}</p>
      ) : (
        <Since key={`${last.rigId} ${last.number}`} last={last} offered={offered} rigName={rigName} />
      )}
    </Part>
  );
}

function Since({ last, offered, rigName }: SinceProps & { readonly last: LastHad }) {
  const had = useFrozenRig(last.rigId, last.number);
  return (
    <div className="flex flex-col gap-2 py-2">
      <p className="text-soft">{words.sinceAbout(last.rigName, last.at)}</p>
      <Asked answer={had}>
        {(before) => (
          <CompareView
            before={before}
            after={offered}
            beforeName={words.lastHad}
            afterName={words.offered}
            rigName={rigName}
          />
        )}
      </Asked>
    </div>
  );
}
