import { memo, type PointerEvent } from 'react';
import type { Fixture } from '#engine/model/fixture.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import { isLocked } from '#engine/model/locked.ts';
import { unitName } from '#words/findings.ts';
import { RIBBON_WORDS } from '#words/sheet.ts';
import { LockMark } from '../locks/lock-mark.tsx';
import { type Block, groundOf } from './ribbon-blocks.ts';

export interface RibbonBlockProps {
  readonly block: Block;
  readonly fixture: Fixture | undefined;
  readonly pixels: number;
  readonly look: 'plain' | 'marked' | 'held';
  readonly tabIndex: number;
  readonly onGo: (fixture: FixtureId) => void;
  /** Left out where blocks stay where they are. */
  readonly onGrab?: ((event: PointerEvent, block: Block) => void) | undefined;
}

/** A fixture on a ribbon, with its channel or unit where there is room for it. */
export const RibbonBlock = memo(function RibbonBlock({
  block,
  fixture,
  pixels,
  look,
  tabIndex,
  onGo,
  onGrab,
}: RibbonBlockProps) {
  const { seat, left, width } = block;
  const ground = GROUNDS[fixture ? groundOf(fixture) : 0] ?? GROUNDS[0];
  const label = String(fixture?.channel ?? fixture?.unit ?? '');
  const locked = fixture !== undefined && isLocked(fixture);
  const name = RIBBON_WORDS.block(unitName(fixture), seat.first, seat.last, locked ? fixture.lock.trim() : '');
  return (
    <li className="contents">
      <button
        type="button"
        tabIndex={tabIndex}
        data-block={block.key}
        title={name}
        aria-label={name}
        aria-current={look === 'marked' ? 'true' : undefined}
        className={`absolute inset-y-0 overflow-hidden border-r border-sheet text-left font-mono text-small text-block-ink ${ground} ${LOOKS[look]}`}
        style={{ left: `${left}%`, width: `${width}%` }}
        onPointerDown={onGrab && ((event) => onGrab(event, block))}
        onClick={() => onGo(seat.fixture)}
      >
        <span aria-hidden="true" className="px-0.5">
          {pixels > 6 + label.length * DIGIT ? label : ''}
        </span>
        {locked && pixels > LOCK ? <LockMark reason={name} className="absolute right-0.5 bottom-0.5" /> : null}
        {look === 'marked' ? <span aria-hidden="true" className="absolute inset-x-0 bottom-0 h-1 bg-ink" /> : null}
      </button>
    </li>
  );
});

const GROUNDS = ['bg-block-1', 'bg-block-2', 'bg-block-3', 'bg-block-4', 'bg-block-5', 'bg-block-6'] as const;
const LOOKS = {
  plain: '',
  marked: 'z-[1]',
  held: 'z-[1] outline-2 -outline-offset-2 outline-dashed outline-ink',
} as const;
/** A block narrower than so many pixels has no room for the sign of a lock; its name says it. */
const LOCK = 9;
/** Pixels of a figure on a block. */
const DIGIT = 7.5;
