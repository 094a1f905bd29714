import { type ReactNode, useId, useLayoutEffect, useRef } from 'react';

export interface DialogProps {
  readonly title: string;
  /** Called on Escape; the owner then stops rendering the dialog, and the focus goes back to where it was. */
  readonly onClose: () => void;
  readonly children: ReactNode;
  /** The answers, in a row at the foot. */
  readonly answers?: ReactNode;
  /** `wide` takes the room that a table needs. */
  readonly width?: keyof typeof WIDTHS;
}

const WIDTHS = { reading: 'w-[34rem]', wide: 'w-[62rem]' } as const;

/** A modal question: render it to open it. The browser keeps the focus inside and gives it back. */
export function Dialog({ title, onClose, children, answers, width = 'reading' }: DialogProps) {
  const ref = useRef<HTMLDialogElement>(null);
  const id = useId();
  useLayoutEffect(() => {
    const dialog = ref.current;
    dialog?.showModal();
    return () => dialog?.close();
  }, []);
  return (
    <dialog
      ref={ref}
      aria-labelledby={id}
      className={`m-auto max-h-[90dvh] ${WIDTHS[width]} max-w-[calc(100vw-1.5rem)] overflow-y-auto rounded-control border border-rule-strong bg-sheet p-5 text-ink`}
      onCancel={(event) => {
        event.preventDefault();
        onClose();
      }}
    >
      <h2 id={id} className="mb-3 text-name">
        {title}
      </h2>
      <div className="flex flex-col gap-3">{children}</div>
      {answers === undefined ? null : <div className="mt-5 flex flex-wrap justify-end gap-2">{answers}</div>}
    </dialog>
  );
}
