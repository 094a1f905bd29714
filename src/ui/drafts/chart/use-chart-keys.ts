import { type KeyboardEvent, useMemo } from 'react';
import { flushSync } from 'react-dom';
import { type BesideCommand, type Command, commandOf } from '../../grid/commands.ts';
import type { Desk } from '../desk.ts';
import { addRow, confirmGuesses, goToTrouble, moveSelected, runCommand } from './chart-actions.ts';

/**
 * The keys of the chart: those of the sheet, with what a chart has of its own. Escape, then Tab, leaves the chart:
 * otherwise Tab goes from cell to cell. `toSlots` gives the focus to the slots.
 */
export function useChartKeys(desk: Desk, toSlots: () => void) {
  return useMemo(() => {
    let leaving = false;
    return (event: KeyboardEvent<HTMLElement>) => {
      if (event.target !== event.currentTarget || event.nativeEvent.isComposing) return;
      const own = ownCommand(event);
      if (own !== undefined) {
        event.preventDefault();
        flushSync(() => own(desk));
        return;
      }
      const command = commandOf(event);
      if (command === undefined || (command.kind === 'tab' && leaving)) return;
      leaving = command.kind === 'escape' || (leaving && event.key === 'Shift');
      let done = true;
      // At once, so that the next key already finds the open field.
      flushSync(() => {
        if (!isBeside(command)) done = runCommand(desk, command);
        else if (BESIDE[command.kind] === null) done = false;
        else BESIDE[command.kind]?.(desk, toSlots);
      });
      if (done) event.preventDefault();
    };
  }, [desk, toSlots]);
}

function ownCommand({ key, altKey, ctrlKey, metaKey }: KeyboardEvent): ((desk: Desk) => void) | undefined {
  if (key === 'Insert' && !ctrlKey && !metaKey) return addRow;
  if (!altKey || ctrlKey || metaKey) return undefined;
  if (key === 'ArrowUp') return (desk) => moveSelected(desk, -1);
  if (key === 'ArrowDown') return (desk) => moveSelected(desk, 1);
  return undefined;
}

/** What a key asks of something beside the chart; null leaves the key to the browser. */
const BESIDE: Readonly<Record<BesideCommand['kind'], ((desk: Desk, toSlots: () => void) => void) | null>> = {
  escape: (desk) => desk.set({ notice: undefined }),
  keys: (desk) => desk.set({ window: { kind: 'keys' } }),
  ribbon: (_, toSlots) => toSlots(),
  slots: (_, toSlots) => toSlots(),
  'next-finding': (desk) => goToTrouble(desk, 1),
  'previous-finding': (desk) => goToTrouble(desk, -1),
  'clear-finding': confirmGuesses,
  find: null,
  lock: null,
  series: null,
};

const isBeside = (command: Command): command is BesideCommand => command.kind in BESIDE;
