import { KEY_WORDS, SHEET_WORDS } from '#words/sheet.ts';
import { Button } from '../../kit/button.tsx';
import { Dialog } from '../../kit/dialog.tsx';

/** The list of keys. */
export function KeysDialog({ onClose }: { readonly onClose: () => void }) {
  return (
    <Dialog title={SHEET_WORDS.keys} onClose={onClose} answers={<Button onClick={onClose}>{SHEET_WORDS.close}</Button>}>
      {KEY_WORDS.map(({ title, keys }) => (
        <section key={title}>
          <h3>{title}</h3>
          <dl className="grid grid-cols-[minmax(9rem,auto)_1fr] gap-x-4">
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
