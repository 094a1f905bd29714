import type { ReactNode } from 'react';
import { EMPTY_WORDS, FILTER_WORDS } from '#words/sheet.ts';
import type { Sheet } from '../grid/sheet.ts';
import { addRow, pasteText } from '../grid/sheet-actions.ts';
import { Button } from '../kit/button.tsx';
import { LinkButton } from '../kit/link-button.tsx';
import { EVERYTHING } from '../live/rows/view.ts';

export interface EmptySheetProps {
  readonly sheet: Sheet;
  readonly state: 'arriving' | 'filtered' | 'reader' | 'empty';
  /** The way to the page that takes lists in. */
  readonly listsIn: ReactNode;
}

/** A sheet without rows says why, and how to begin. */
export function EmptySheet({ sheet, state, listsIn }: EmptySheetProps) {
  if (state === 'arriving') return <p className="p-5 text-soft">{EMPTY_WORDS.arriving}</p>;
  if (state === 'filtered') {
    return (
      <div className="flex flex-col items-start gap-2 p-5">
        <p>{EMPTY_WORDS.filtered}</p>
        <LinkButton onClick={() => sheet.setView({ ...sheet.state().view, filter: EVERYTHING })}>
          {FILTER_WORDS.clear}
        </LinkButton>
      </div>
    );
  }
  return (
    <div className="flex max-w-[36rem] flex-col items-start gap-3 p-5">
      <h2 className="text-name">{EMPTY_WORDS.title}</h2>
      {state === 'reader' ? <p>{EMPTY_WORDS.reader}</p> : <Begin sheet={sheet} listsIn={listsIn} />}
    </div>
  );
}

function Begin({ sheet, listsIn }: Pick<EmptySheetProps, 'sheet' | 'listsIn'>) {
  return (
    <>
      <p>{EMPTY_WORDS.start}</p>
      <Button look="main" onClick={() => addRow(sheet)}>
        {EMPTY_WORDS.type}
      </Button>
      <textarea
        aria-label={EMPTY_WORDS.pasteName}
        className="min-h-[4.5rem] w-full rounded-control border border-edge bg-sheet p-2 placeholder:text-soft"
        placeholder={EMPTY_WORDS.paste}
        value=""
        onChange={() => undefined}
        onPaste={(event) => {
          event.preventDefault();
          pasteText(sheet, event.clipboardData.getData('text/plain'));
        }}
      />
      <p>
        {EMPTY_WORDS.list} {listsIn}
      </p>
    </>
  );
}
