import { useState, useSyncExternalStore } from 'react';
import type { FixtureId } from '#engine/model/ids.ts';
import { EMPTY_WORDS } from '#words/sheet.ts';
import { UPKEEP_WORDS as words } from '#words/upkeep.ts';
import { chosenUnits } from '../../live/chosen-units.ts';
import type { RigStore } from '../../live/rig-store.ts';
import { useCalmRig } from '../../live/use-calm-rig.ts';
import type { CardScene } from '../../plant/card-list.tsx';
import { UnitUpkeep } from '../../upkeep/unit-upkeep.tsx';
import { Panel } from '../../workspace/panel.tsx';
import { JumpLine } from '../jump-line.tsx';
import { ToSheet } from '../rig/to-sheet.tsx';
import { SheetLinks } from '../sheets-out/sheet-links.tsx';
import { Steps } from '../steps.tsx';
import { FaultsPart } from './faults-part.tsx';
import { HiresPart } from './hires-part.tsx';
import { ReadingsPart } from './readings-part.tsx';
import { SwapsPart } from './swaps-part.tsx';

export interface UpkeepProps {
  readonly store: RigStore;
  readonly rigId: string;
  readonly rigName: string;
}

/** Faults, swaps, readings and hired items of an open rig, and beside them everything of one unit. */
export function Upkeep({ store, rigId, rigName }: UpkeepProps) {
  const rig = useCalmRig(store);
  const arrived = useSyncExternalStore(store.subscribeLink, store.hasArrived);
  const canEdit = useSyncExternalStore(store.subscribeLink, store.canEdit);
  const [unit, setUnit] = useState<FixtureId>();
  if (!arrived) return <p className="px-5 py-4 text-soft">{EMPTY_WORDS.arriving}</p>;
  const scene: CardScene = { store, rig, writable: canEdit ? 'yes' : 'no' };
  const open = (id: FixtureId) => {
    // The sheet begins at the unit one was at last.
    chosenUnits(store).choose([id]);
    setUnit(id);
  };
  return (
    <div className="relative flex min-h-0 flex-1">
      <div className="flex min-w-0 flex-1 flex-col gap-7 overflow-y-auto px-4 py-4 sm:px-5">
        <div className="flex flex-col gap-1">
          <JumpLine name={words.jump} parts={words.parts} />
          <div className="flex flex-wrap gap-x-8">
            <SheetLinks kind="fault-list" rigId={rigId} rigName={rigName} />
            {canEdit ? <Steps store={store} /> : <p>{words.reader}</p>}
          </div>
        </div>
        <FaultsPart scene={scene} onUnit={open} />
        <SwapsPart scene={scene} onUnit={open} />
        <ReadingsPart scene={scene} onUnit={open} />
        <HiresPart scene={scene} />
      </div>
      {unit === undefined ? null : (
        <Panel title={words.story} onClose={() => setUnit(undefined)}>
          <UnitUpkeep key={unit} store={store} id={unit} />
          <ToSheet rigId={rigId} />
        </Panel>
      )}
    </div>
  );
}
