import { useCallback, useMemo, useRef, useState } from 'react';
import type { Universe } from '#engine/model/address.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';
import { universeSlots } from '#engine/sheet/universe-slots.ts';
import { SLOT_CARD_WORDS } from '#words/slots.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import { chosenUnits } from '../../live/chosen-units.ts';
import type { RigStore } from '../../live/rig-store.ts';
import { RibbonStrip } from '../../universes/ribbon-strip.tsx';
import { SlotCard } from '../../universes/slot-card.tsx';
import { useOccupancy } from '../../universes/use-occupancy.ts';
import { Panel } from '../../workspace/panel.tsx';
import { ToSheet } from '../rig/to-sheet.tsx';
import { type SlotLine, slotLines } from './slot-lines.ts';
import { SlotList } from './slot-list.tsx';

export interface UniverseViewProps {
  readonly store: RigStore;
  readonly rigId: string;
  readonly rig: Rig;
  readonly universe: Universe;
}

/** One universe: its ribbon, every slot of it, and beside them the unit of the slot one opened. */
export function UniverseView({ store, rigId, rig, universe }: UniverseViewProps) {
  const occupancy = useOccupancy(store, universe);
  const lines = useMemo(() => slotLines(universeSlots(rig, occupancy)), [rig, occupancy]);
  const [chosen, choose] = useState(() => Math.max(0, lineOfUnit(lines, chosenUnits(store).ids()[0])));
  const [open, setOpen] = useState(false);
  const frame = useRef<HTMLDivElement>(null);
  const at = Math.min(chosen, lines.length - 1);
  const user = lines[at]?.user;
  const toList = () => frame.current?.querySelector<HTMLElement>('[role="grid"]')?.focus({ preventScroll: true });
  const setChosen = useCallback(
    (line: number) => {
      const unit = lines[line]?.user?.fixture.id;
      if (unit !== undefined) chosenUnits(store).choose([unit]);
      choose(line);
    },
    [lines, store],
  );
  const openLine = useCallback(
    (line: number) => {
      setChosen(line);
      setOpen(true);
    },
    [setChosen],
  );
  const openUnit = (fixture: FixtureId) => {
    const line = lineOfUnit(lines, fixture);
    if (line >= 0) openLine(line);
  };
  const close = () => {
    setOpen(false);
    toList();
  };
  return (
    <div ref={frame} className="relative flex min-h-0 flex-1">
      <div className="flex min-w-0 flex-1 flex-col">
        <div className="px-4 pt-2 sm:px-5">
          <RibbonStrip store={store} universe={universe} marked={user?.fixture.id} onGo={openUnit} />
        </div>
        <SlotList
          universe={universe}
          lines={lines}
          at={at}
          onGo={setChosen}
          onOpen={openLine}
          onEscape={() => setOpen(false)}
        />
      </div>
      {open && user !== undefined ? (
        <Panel title={SLOT_CARD_WORDS.title} onClose={close}>
          <SlotCard
            store={store}
            id={user.fixture.id}
            marked={user}
            steps={
              <>
                <LinkButton onClick={() => setChosen(unitBeside(lines, at, -1))}>{SLOT_CARD_WORDS.previous}</LinkButton>
                <LinkButton onClick={() => setChosen(unitBeside(lines, at, 1))}>{SLOT_CARD_WORDS.next}</LinkButton>
                <ToSheet rigId={rigId} />
              </>
            }
          />
        </Panel>
      ) : null}
    </div>
  );
}

const lineOfUnit = (lines: readonly SlotLine[], unit: FixtureId | undefined) =>
  unit === undefined ? -1 : lines.findIndex((line) => line.user?.fixture.id === unit);

/** The line where the next unit or the one before begins; the same line when there is none. */
function unitBeside(lines: readonly SlotLine[], at: number, step: 1 | -1): number {
  const here = lines[at]?.user?.fixture.id;
  for (let line = at + step; line >= 0 && line < lines.length; line += step) {
    const each = lines[line];
    if (each?.user !== undefined && each.place === 'first' && each.user.fixture.id !== here) return line;
  }
  return at;
}
