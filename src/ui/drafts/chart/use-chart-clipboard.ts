import { type ClipboardEvent, useMemo } from 'react';
import type { Desk } from '../desk.ts';
import { clearSelected, copySelected, pasteCells } from './chart-actions.ts';

/**
 * Copy, cut and paste by the browser’s own events, which also work over plain HTTP. Several lines that were not copied
 * here are read as a chart, and shown before they are taken.
 */
export function useChartClipboard(desk: Desk) {
  return useMemo(() => {
    let copied: string | undefined;
    const copy = (event: ClipboardEvent<HTMLElement>) => {
      if (event.target !== event.currentTarget) return false;
      copied = copySelected(desk);
      event.clipboardData.setData('text/plain', copied);
      event.preventDefault();
      return true;
    };
    return {
      onCopy: (event: ClipboardEvent<HTMLElement>) => void copy(event),
      onCut(event: ClipboardEvent<HTMLElement>) {
        if (copy(event) && desk.store.canEdit()) clearSelected(desk);
      },
      onPaste(event: ClipboardEvent<HTMLElement>) {
        if (event.target !== event.currentTarget || !desk.store.canEdit()) return;
        event.preventDefault();
        const text = event.clipboardData.getData('text/plain');
        const isChart = plain(text).includes('\n') && plain(text) !== plain(copied ?? '');
        if (isChart) desk.set({ window: { kind: 'paste', text } });
        else pasteCells(desk, text);
      },
    };
  }, [desk]);
}

/** Some systems change line ends on the way, and every copy ends in one. */
const plain = (text: string) => text.replace(/\r\n?/g, '\n').replace(/\n+$/, '');
