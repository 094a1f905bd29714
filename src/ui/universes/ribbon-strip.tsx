import { type KeyboardEvent, useRef, useState } from 'react';
import { getRow } from '#base/table.ts';
import type { Universe } from '#engine/model/address.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import { RIBBON_WORDS } from '#words/sheet.ts';
import type { RigStore } from '../live/rig-store.ts';
import { RibbonBlock } from './ribbon-block.tsx';
import { blocksOf } from './ribbon-blocks.ts';
import { RibbonGround } from './ribbon-ground.tsx';
import { useOccupancy } from './use-occupancy.ts';
import { useWidth } from './use-width.ts';

export interface RibbonStripProps {
  readonly store: RigStore;
  readonly universe: Universe;
  /** The unit that is marked: the one the sheet's cursor is in. */
  readonly marked: FixtureId | undefined;
  /** Goes to a unit’s row in the sheet. */
  readonly onGo: (fixture: FixtureId) => void;
}

/** One universe as a ribbon of 512 slots: fixtures are blocks, clashes are hatched. One stop of Tab; arrows go from unit to unit. */
export function RibbonStrip({ store, universe, marked, onGo }: RibbonStripProps) {
  const occupancy = useOccupancy(store, universe);
  const rig = store.rig();
  const strip = useRef<HTMLUListElement>(null);
  const [at, setAt] = useState(0);
  const width = useWidth(strip);
  const blocks = blocksOf(occupancy);
  const stop = Math.max(
    0,
    marked ? blocks.findIndex(({ seat }) => seat.fixture === marked) : Math.min(at, blocks.length - 1),
  );
  const press = (event: KeyboardEvent) => {
    const step = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0;
    if (step === 0) return;
    event.preventDefault();
    const buttons = [...(strip.current?.querySelectorAll('button') ?? [])];
    const next = Math.max(
      0,
      Math.min(buttons.length - 1, buttons.indexOf(document.activeElement as HTMLButtonElement) + step),
    );
    setAt(next);
    buttons[next]?.focus();
  };
  return (
    <RibbonGround rig={rig} occupancy={occupancy}>
      <ul
        ref={strip}
        aria-label={`${RIBBON_WORDS.universe} ${universe}`}
        className="absolute inset-0"
        onKeyDown={press}
      >
        {blocks.map((block, n) => (
          <RibbonBlock
            key={block.key}
            block={block}
            fixture={getRow(rig.fixtures, block.seat.fixture)}
            pixels={(block.width * width) / 100}
            look={block.seat.fixture === marked ? 'marked' : 'plain'}
            tabIndex={n === stop ? 0 : -1}
            onGo={onGo}
          />
        ))}
      </ul>
    </RibbonGround>
  );
}
