import { type ClipboardEvent, useMemo } from 'react';
import type { Sheet } from './sheet.ts';
import { clearSelected, copySelected, pasteText } from './sheet-actions.ts';

/**
 * Copy, cut and paste by the browser’s own events, which also work over plain HTTP. Within an open cell they are the
 * text field’s.
 */
export function useGridClipboard(sheet: Sheet) {
  return useMemo(() => {
    const copy = (event: ClipboardEvent<HTMLElement>) => {
      if (event.target !== event.currentTarget) return false;
      event.clipboardData.setData('text/plain', copySelected(sheet));
      event.preventDefault();
      return true;
    };
    return {
      onCopy: (event: ClipboardEvent<HTMLElement>) => void copy(event),
      onCut(event: ClipboardEvent<HTMLElement>) {
        if (copy(event)) clearSelected(sheet);
      },
      onPaste(event: ClipboardEvent<HTMLElement>) {
        if (event.target !== event.currentTarget) return;
        event.preventDefault();
        pasteText(sheet, event.clipboardData.getData('text/plain'));
      },
    };
  }, [sheet]);
}
