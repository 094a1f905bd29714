import { useState, useSyncExternalStore } from 'react';
import { getRow } from '#base/table.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import { recordOf } from '#engine/model/record.ts';
import { type Chapter, unitStory } from '#engine/upkeep/unit-story.ts';
import { unitName } from '#words/findings.ts';
import { byOn, hireText, readingText, swapText, UPKEEP_WORDS as words } from '#words/upkeep.ts';
import { Button } from '../kit/button.tsx';
import type { RigStore } from '../live/rig-store.ts';
import { useCalmRig } from '../live/use-calm-rig.ts';
import type { CardScene } from '../plant/card-list.tsx';
import { FaultLine } from './fault-line.tsx';
import { QuickReport } from './quick-report.tsx';
import { ReadingForm } from './reading-form.tsx';
import { SwapDialog } from './swap-dialog.tsx';

export interface UnitUpkeepProps {
  readonly store: RigStore;
  readonly id: FixtureId;
}

/** Everything of one unit: what to do about it, and what happened to it from first to last. */
export function UnitUpkeep({ store, id }: UnitUpkeepProps) {
  const rig = useCalmRig(store);
  const writable = useSyncExternalStore(store.subscribeLink, store.canEdit) ? 'yes' : 'no';
  const scene: CardScene = { store, rig, writable };
  const [asking, setAsking] = useState<'report' | 'swap'>();
  const fixture = getRow(rig.fixtures, id);
  const story = unitStory(recordOf(rig.cards), id);
  const close = () => setAsking(undefined);
  if (fixture === undefined) return <p>{words.goneUnit('')}</p>;
  return (
    <div className="flex flex-col gap-3">
      <div>
        <h3 className="text-name">{unitName(fixture)}</h3>
        <p className="text-soft">{[fixture.type, fixture.mode, fixture.firmware].filter(Boolean).join(' · ')}</p>
      </div>
      {writable === 'no' ? null : (
        <div className="flex flex-wrap gap-2">
          <Button look="main" onClick={() => setAsking('report')}>
            {words.report}
          </Button>
          <Button onClick={() => setAsking('swap')}>{words.swap}</Button>
        </div>
      )}
      {story.length === 0 ? <p>{words.storyNone}</p> : null}
      <ol aria-label={words.story} className="flex flex-col">
        {story.map((chapter) => (
          <li key={`${chapter.kind} ${chapter.id}`} className="border-b border-rule">
            <ChapterLine scene={scene} chapter={chapter} />
          </li>
        ))}
      </ol>
      {writable === 'no' ? null : (
        <details>
          <summary className="flex min-h-control cursor-pointer items-center underline decoration-edge underline-offset-[0.2em]">
            {words.note}
          </summary>
          <ReadingForm store={store} unit={id} />
        </details>
      )}
      {asking === 'report' ? <QuickReport store={store} id={id} onClose={close} /> : null}
      {asking === 'swap' ? <SwapDialog store={store} unit={id} onClose={close} /> : null}
    </div>
  );
}

interface ChapterLineProps {
  readonly scene: CardScene;
  readonly chapter: Chapter;
}

function ChapterLine({ scene, chapter }: ChapterLineProps) {
  switch (chapter.kind) {
    case 'fault':
      return <FaultLine scene={scene} fault={chapter.fault} />;
    case 'swap': {
      const { swap } = chapter;
      return <Line title={words.swapped} what={joined(swapText(swap), swap.why)} who={byOn(swap.by, swap.on)} />;
    }
    case 'reading': {
      const { reading } = chapter.step;
      return <Line title="" what={readingText(chapter.step)} who={byOn(reading.by, reading.on)} />;
    }
    case 'hire':
      return <Line title={words.parts.hires} what={hireText(chapter.hire)} who="" />;
  }
}

const joined = (...parts: readonly string[]) => parts.filter((part) => part !== '').join(': ');

function Line({ title, what, who }: { readonly title: string; readonly what: string; readonly who: string }) {
  return (
    <p className="flex flex-wrap gap-x-3 py-1.5 [overflow-wrap:anywhere]">
      {title === '' ? null : <span className="font-medium">{title}</span>}
      <span>{what}</span>
      <span className="text-soft">{who}</span>
    </p>
  );
}
