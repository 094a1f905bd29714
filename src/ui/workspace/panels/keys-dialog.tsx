import { useEffect, useRef } from 'react';
import { KEY_WORDS } from '#words/keys.ts';
import { SHEET_WORDS } from '#words/sheet.ts';
import { Button } from '../../kit/button.tsx';
import { Dialog } from '../../kit/dialog.tsx';

export interface KeysDialogProps {
  /** Keys in groups, and what each does; those of the sheet where they are left out. */
  readonly groups?: typeof KEY_WORDS;
  readonly onClose: () => void;
}

/** The list of keys. */
export function KeysDialog({ groups = KEY_WORDS, onClose }: KeysDialogProps) {
  const top = useRef<HTMLDivElement>(null);
  // The one thing to press stands at the end, and the focus has scrolled there.
  useEffect(() => {
    // Scrolling answers with a promise in newer browsers, which is nothing to undo.
    top.current?.closest('dialog')?.scrollTo(0, 0);
  }, []);
  return (
    <Dialog title={SHEET_WORDS.keys} onClose={onClose} answers={<Button onClick={onClose}>{SHEET_WORDS.close}</Button>}>
      <div ref={top} className="contents" />
      {groups.map(({ title, keys }) => (
        <section key={title}>
          <h3>{title}</h3>
          <dl className="grid grid-cols-[14rem_1fr] max-sm:grid-cols-1 gap-x-4">
            {keys.map(([press, does]) => (
              <div key={press} className="contents">
                <dt>
                  <kbd>{press}</kbd>
                </dt>
                <dd>{does}</dd>
              </div>
            ))}
          </dl>
        </section>
      ))}
    </Dialog>
  );
}
