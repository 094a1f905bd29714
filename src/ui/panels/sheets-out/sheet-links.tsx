import type { SheetKind } from '#engine/sheet/sheet.ts';
import { SHEETS_OUT_WORDS as words } from '#words/rig-pages.ts';
import { SHEET_TITLES } from '#words/sheets.ts';
import { LINK_CLASSES } from '../../kit/text-link.tsx';
import { PrintSheet } from './print-sheet.tsx';

export interface SheetLinksProps {
  readonly kind: SheetKind;
  readonly rigId: string;
  readonly rigName: string;
}

/** The sheet of a page, to be printed or taken out as a file. */
export function SheetLinks({ kind, rigId, rigName }: SheetLinksProps) {
  return (
    <p className="flex flex-wrap items-baseline gap-x-3">
      <span>{SHEET_TITLES[kind]}</span>
      <PrintSheet kind={kind} rigName={rigName} />
      <a
        href={`/api/rigs/${rigId}/sheets/${kind}.csv`}
        download
        className={LINK_CLASSES}
        aria-label={words.download(SHEET_TITLES[kind])}
      >
        {words.csvWord}
      </a>
    </p>
  );
}
