import { useId, useRef, useState } from 'react';
import { INVITE_WORDS } from '#words/crew.ts';
import { Button } from '../../kit/button.tsx';
import { CONTROL_CLASSES, describedBy, FieldFrame } from '../../kit/field-frame.tsx';

export interface CopyLineProps {
  readonly label: string;
  readonly hint: string;
  readonly text: string;
}

/**
 * A line to copy. Over plain HTTP a browser grants no clipboard API, so the line is selected and copied the old way; where
 * even that is refused it stays selected, for the person's own keys.
 */
export function CopyLine({ label, hint, text }: CopyLineProps) {
  const id = useId();
  const ref = useRef<HTMLInputElement>(null);
  const [said, setSaid] = useState('');
  const copy = () => {
    ref.current?.focus();
    ref.current?.select();
    setSaid(document.execCommand('copy') ? INVITE_WORDS.copied : INVITE_WORDS.copyByHand);
  };
  return (
    <>
      <FieldFrame id={id} label={label} hint={hint}>
        <input
          id={id}
          ref={ref}
          className={`${CONTROL_CLASSES} font-mono`}
          aria-describedby={describedBy({ id, hint })}
          readOnly
          value={text}
          onFocus={(event) => event.currentTarget.select()}
        />
      </FieldFrame>
      <div className="flex flex-wrap items-center gap-3">
        <Button look="main" onClick={copy}>
          {INVITE_WORDS.copy}
        </Button>
        <span role="status">{said}</span>
      </div>
    </>
  );
}
