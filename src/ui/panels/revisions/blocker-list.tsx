import type { Finding } from '#engine/model/finding.ts';
import { findingSentence } from '#words/findings.ts';
import { FREEZE_WORDS as words } from '#words/revisions.ts';
import { Mark } from '../../kit/mark.tsx';
import type { RigStore } from '../../live/rig-store.ts';
import { ShowMore, useShown } from '../../print/show-more.tsx';

export interface BlockerListProps {
  readonly store: RigStore;
  readonly blockers: readonly Finding[];
  readonly ticked: ReadonlySet<string>;
  readonly onTick: (key: string) => void;
}

/** The blockers that stand today, each with a box for somebody who accepts it. */
export function BlockerList({ store, blockers, ticked, onTick }: BlockerListProps) {
  const { shown, onMore } = useShown(blockers.length);
  return (
    <fieldset>
      <legend className="font-medium">{words.blockers(blockers.length)}</legend>
      <p className="text-soft">{words.blockersAbout}</p>
      <ul>
        {blockers.slice(0, shown).map((finding) => (
          <li key={finding.key} className="border-b border-rule">
            <label className="flex min-h-control items-start gap-2 py-1.5 [overflow-wrap:anywhere]">
              <input
                type="checkbox"
                className="mt-0.5 size-4 shrink-0 accent-ink touch:size-6"
                checked={ticked.has(finding.key)}
                onChange={() => onTick(finding.key)}
              />
              <span>
                <Mark severity="blocker" /> {findingSentence(finding, store.rig())}
              </span>
            </label>
          </li>
        ))}
      </ul>
      <ShowMore shown={shown} all={blockers.length} onMore={onMore} />
    </fieldset>
  );
}
