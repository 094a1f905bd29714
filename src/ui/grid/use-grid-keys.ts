import { type KeyboardEvent, useMemo } from 'react';
import { flushSync } from 'react-dom';
import { type BesideCommand, commandOf } from './commands.ts';
import type { Sheet } from './sheet.ts';
import { runCommand } from './sheet-actions.ts';

/**
 * The keys of the sheet. What belongs beside it goes to `beside`. Escape, then Tab, leaves the sheet: otherwise Tab goes
 * from cell to cell, and nobody could get out by keys alone.
 */
export function useGridKeys(sheet: Sheet, pageLines: () => number, beside: (command: BesideCommand['kind']) => void) {
  return useMemo(() => {
    let leaving = false;
    return (event: KeyboardEvent<HTMLElement>) => {
      if (event.target !== event.currentTarget || event.nativeEvent.isComposing) return;
      const command = commandOf(event);
      if (command === undefined) return;
      if (command.kind === 'tab' && leaving) return;
      leaving = command.kind === 'escape' || (leaving && event.key === 'Shift');
      let done = true;
      // At once, so that the next key already finds the open field.
      flushSync(() => {
        if (isBeside(command)) beside(command.kind);
        else done = runCommand(sheet, command, pageLines());
      });
      if (done) event.preventDefault();
    };
  }, [sheet, pageLines, beside]);
}

const BESIDE: Readonly<Record<BesideCommand['kind'], true>> = {
  escape: true,
  series: true,
  find: true,
  'next-finding': true,
  'previous-finding': true,
  'clear-finding': true,
  ribbon: true,
  slots: true,
  lock: true,
  keys: true,
};

const isBeside = (command: { readonly kind: string }): command is BesideCommand => command.kind in BESIDE;
