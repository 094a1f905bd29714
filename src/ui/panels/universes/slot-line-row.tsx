import { memo } from 'react';
import { slotReader } from '#engine/sheet/slot-cells.ts';
import { unitName } from '#words/findings.ts';
import { SLOT_WORDS } from '#words/slots.ts';
import { Mark } from '../../kit/mark.tsx';
import type { SlotLine } from './slot-lines.ts';

export const SLOT_COLUMNS =
  'grid items-center gap-x-3 grid-cols-[3rem_minmax(0,3fr)_3rem_minmax(0,6fr)_5rem_minmax(0,2fr)_7.5rem] max-sm:grid-cols-[3.25rem_minmax(0,1fr)_auto] max-sm:content-center';

export interface SlotLineRowProps {
  readonly id: string;
  readonly line: SlotLine;
  readonly index: number;
  readonly top: number;
  readonly height: number;
  readonly look: 'plain' | 'here';
  readonly onOpen: (index: number) => void;
}

const cellsOf = slotReader(SLOT_WORDS);

/** One line of the list of slots: slot, unit, what it does there. On a phone in two lines, the slot large. */
export const SlotLineRow = memo(function SlotLineRow(props: SlotLineRowProps) {
  const { id, line, index, top, height, look, onOpen } = props;
  const { slot, state, user, place } = line;
  const { does, byte, cell } = user === undefined ? NOTHING : cellsOf(user.uses);
  const known = user?.uses !== null && user?.uses.length !== 0;
  return (
    // Its keys are those of the grid it is in.
    <div
      id={id}
      role="row"
      aria-rowindex={index + 2}
      aria-selected={look === 'here'}
      className={`${SLOT_COLUMNS} absolute inset-x-0 border-b border-rule px-4 sm:px-5 aria-selected:bg-selected ${place === 'first' ? 'border-t border-t-rule-strong' : ''}`}
      style={{ top, height }}
      onPointerDown={(event) => {
        if (event.button === 0) onOpen(index);
      }}
    >
      <span role="gridcell" className="font-mono text-large font-semibold tabular-nums max-sm:row-span-2 sm:text-right">
        {slot}
      </span>
      <span role="gridcell" className={`truncate ${place === 'next' ? 'text-soft' : ''} max-sm:order-1`}>
        {user === undefined ? '' : unitName(user.fixture)}
      </span>
      <span role="gridcell" className="truncate text-right text-soft tabular-nums max-sm:hidden">
        {user?.fixture.channel ?? ''}
      </span>
      <span
        role="gridcell"
        className={`truncate text-large ${known ? '' : 'text-soft'} max-sm:order-3 max-sm:col-span-2`}
      >
        {user === undefined ? SLOT_WORDS.state('free') : does}
        <span className="text-soft sm:hidden"> {[byte, cell].filter((text) => text !== null).join(', ')}</span>
      </span>
      <span role="gridcell" className="truncate max-sm:hidden">
        {byte}
      </span>
      <span role="gridcell" className="truncate text-soft max-sm:hidden">
        {cell}
      </span>
      <span role="gridcell" className="truncate max-sm:order-2">
        {state === 'claimed-twice' ? <Mark severity="blocker" className="mr-1" /> : null}
        {state === 'acting-as-one' ? <Mark severity="note" className="mr-1" /> : null}
        {state === 'claimed-twice' || state === 'acting-as-one' ? SLOT_WORDS.state(state) : ''}
      </span>
    </div>
  );
});

const NOTHING = { does: null, byte: null, cell: null } as const;
