import { type ReactNode, useEffect, useId, useRef } from 'react';
import { SHEET_WORDS } from '#words/sheet.ts';
import { Button } from '../kit/button.tsx';

export interface PanelProps {
  readonly title: string;
  readonly about?: string;
  readonly onClose: () => void;
  readonly children: ReactNode;
}

const BESIDE =
  'w-[26rem] max-w-full border-l border-rule-strong max-[50rem]:absolute max-[50rem]:inset-0 max-[50rem]:z-20 max-[50rem]:w-full';

/** Something beside the sheet: it takes the focus when it opens, and Escape closes it. */
export function Panel({ title, about, onClose, children }: PanelProps) {
  const id = useId();
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  return (
    <section
      aria-labelledby={id}
      className={`flex shrink-0 flex-col bg-paper ${BESIDE}`}
      onKeyDown={(event) => {
        if (event.key !== 'Escape' || event.defaultPrevented || isAsked(event.target)) return;
        event.preventDefault();
        onClose();
      }}
    >
      <div className="flex items-center gap-3 border-b border-rule-strong px-4 py-1">
        <h2 ref={heading} id={id} tabIndex={-1} className="flex-1 text-name outline-none">
          {title}
        </h2>
        <Button onClick={onClose}>{SHEET_WORDS.close}</Button>
      </div>
      <div className="flex min-h-0 flex-1 flex-col gap-3 overflow-y-auto px-4 py-3">
        {about === undefined ? null : <p className="text-soft">{about}</p>}
        {children}
      </div>
    </section>
  );
}

/** A question that is open within it closes by itself. */
const isAsked = (target: EventTarget) => target instanceof Element && target.closest('dialog') !== null;
