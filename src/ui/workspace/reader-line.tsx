import { useSyncExternalStore } from 'react';
import { SHEET_WORDS } from '#words/sheet.ts';
import type { Sheet } from '../grid/sheet.ts';

/** Says to a reader what they can and cannot do here. */
export function ReaderLine({ sheet }: { readonly sheet: Sheet }) {
  const status = useSyncExternalStore(sheet.store.subscribeLink, sheet.store.status);
  if (status.state !== 'read-only') return null;
  return <p className="border-b border-rule-strong px-4 py-1 text-soft sm:px-5">{SHEET_WORDS.readOnly}</p>;
}
