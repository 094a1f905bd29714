import type { FixtureId } from '#engine/model/ids.ts';
import { RIBBONS_WORDS } from '#words/ribbons.ts';
import { SLOT_CARD_WORDS } from '#words/slots.ts';
import { UPKEEP_WORDS } from '#words/upkeep.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import type { RigStore } from '../../live/rig-store.ts';
import { type BlockCursor, blockOfKey, cursorSeat, type Ribbons } from '../../universes/block-cursor.ts';
import { SlotCard } from '../../universes/slot-card.tsx';
import { UnitUpkeep } from '../../upkeep/unit-upkeep.tsx';
import { Panel } from '../../workspace/panel.tsx';
import { ToSheet } from '../rig/to-sheet.tsx';

export interface UnitPanelProps {
  readonly store: RigStore;
  readonly id: FixtureId;
  readonly ribbons: Ribbons;
  readonly cursor: BlockCursor | undefined;
  readonly onStep: (cursor: BlockCursor) => void;
  readonly onOpen: (fixture: FixtureId) => void;
  readonly onClose: () => void;
  /** Left out where blocks stay where they are. */
  readonly onCarry?: (() => void) | undefined;
  readonly rigId: string;
}

/** The slots of a block’s unit beside the ribbons, and the way to the blocks beside it. */
export function UnitPanel({ store, id, ribbons, cursor, onStep, onOpen, onClose, onCarry, rigId }: UnitPanelProps) {
  const step = (key: 'ArrowLeft' | 'ArrowRight') => {
    const next = cursor && blockOfKey(key, cursor, ribbons);
    const seat = cursorSeat(next, ribbons)?.seat;
    if (next === undefined || seat === undefined) return;
    onStep(next);
    onOpen(seat.fixture);
  };
  return (
    <Panel title={SLOT_CARD_WORDS.title} onClose={onClose}>
      <SlotCard
        store={store}
        id={id}
        steps={
          <>
            <LinkButton onClick={() => step('ArrowLeft')}>{SLOT_CARD_WORDS.previous}</LinkButton>
            <LinkButton onClick={() => step('ArrowRight')}>{SLOT_CARD_WORDS.next}</LinkButton>
            <ToSheet rigId={rigId} />
            {onCarry === undefined ? null : <LinkButton onClick={onCarry}>{RIBBONS_WORDS.carry}</LinkButton>}
          </>
        }
      />
      <details>
        <summary className="flex min-h-control cursor-pointer items-center underline decoration-edge underline-offset-[0.2em]">
          {UPKEEP_WORDS.title}
        </summary>
        <UnitUpkeep key={id} store={store} id={id} />
      </details>
    </Panel>
  );
}
