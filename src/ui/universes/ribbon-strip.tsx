import { type KeyboardEvent, memo, useRef, useState } from 'react';
import { getRow } from '#base/table.ts';
import { SLOTS, type Universe } from '#engine/model/address.ts';
import type { Fixture } from '#engine/model/fixture.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';
import { unitName } from '#words/findings.ts';
import { RIBBON_WORDS } from '#words/sheet.ts';
import type { RigStore } from '../live/rig-store.ts';
import { type Block, blocksOf, clashesOf, groundOf } from './ribbon-blocks.ts';
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

const GROUNDS = ['bg-block-1', 'bg-block-2', 'bg-block-3', 'bg-block-4', 'bg-block-5', 'bg-block-6'] as const;
const HATCH =
  'border border-blocker bg-[repeating-linear-gradient(135deg,var(--color-blocker)_0_1.5px,transparent_1.5px_6px)]';
/** Pixels of a figure on a block. */
const DIGIT = 7.5;
const TICKS = Array.from({ length: Math.ceil(SLOTS / 50) }, (_, n) => n * 50 + 1);

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
    <div className="min-w-0">
      <div className="relative h-8 border border-edge bg-sheet touch:h-[2.875rem]">
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
        {clashesOf(occupancy, (a, b) => actAsOne(rig, a, b)).map(({ left, width }) => (
          <span
            key={left}
            className={`pointer-events-none absolute inset-y-0 z-[2] ${HATCH}`}
            style={{ left: `${left}%`, width: `${width}%` }}
          />
        ))}
      </div>
      <div aria-hidden="true" className="relative h-4 font-mono text-small leading-4 text-soft">
        {TICKS.map((slot) => (
          <span
            key={slot}
            className="absolute max-sm:nth-[even]:hidden"
            style={{ left: `${(100 * (slot - 1)) / SLOTS}%` }}
          >
            {slot}
          </span>
        ))}
      </div>
    </div>
  );
}

interface RibbonBlockProps {
  readonly block: Block;
  readonly fixture: Fixture | undefined;
  readonly pixels: number;
  readonly look: 'plain' | 'marked';
  readonly tabIndex: number;
  readonly onGo: (fixture: FixtureId) => void;
}

const RibbonBlock = memo(function RibbonBlock({ block, fixture, pixels, look, tabIndex, onGo }: RibbonBlockProps) {
  const { seat, left, width } = block;
  const ground = GROUNDS[fixture ? groundOf(fixture) : 0] ?? GROUNDS[0];
  const label = String(fixture?.channel ?? fixture?.unit ?? '');
  const name = RIBBON_WORDS.block(unitName(fixture), seat.first, seat.last);
  return (
    <li className="contents">
      <button
        type="button"
        tabIndex={tabIndex}
        title={name}
        aria-label={name}
        aria-current={look === 'marked' ? 'true' : undefined}
        className={`absolute inset-y-0 overflow-hidden border-r border-sheet text-left font-mono text-small text-block-ink ${ground} ${look === 'marked' ? 'z-[1]' : ''}`}
        style={{ left: `${left}%`, width: `${width}%` }}
        onClick={() => onGo(seat.fixture)}
      >
        <span aria-hidden="true" className="px-0.5">
          {pixels > 6 + label.length * DIGIT ? label : ''}
        </span>
        {look === 'marked' ? <span aria-hidden="true" className="absolute inset-x-0 bottom-0 h-1 bg-ink" /> : null}
      </button>
    </li>
  );
});

/** Units that share their start, mode and channel do so on purpose (common practice). */
function actAsOne(rig: Rig, one: FixtureId, other: FixtureId): boolean {
  const a = getRow(rig.fixtures, one);
  const b = getRow(rig.fixtures, other);
  if (a === undefined || b === undefined || a.channel === null || a.id === b.id) return false;
  return a.channel === b.channel && a.type === b.type && a.mode === b.mode && a.addresses.join() === b.addresses.join();
}
