import { useState } from 'react';
import { CONTROL_CLASSES } from './field-frame.tsx';

export interface LineFieldProps {
  /** What a screen reader calls it. */
  readonly name: string;
  readonly value: string;
  readonly placeholder?: string;
  readonly disabled?: boolean;
  /** Id of a list of values to offer. */
  readonly list?: string | undefined;
  readonly inputMode?: 'text' | 'decimal';
  /** Why what stands there cannot be meant. */
  readonly trouble?: string;
  /** Called when it is left or Enter is pressed, with a text other than `value`. */
  readonly onWrite: (text: string) => void;
}

/** A text that is written when the person is done with it, so that half a word is nobody's edit. Escape leaves it as it was. */
export function LineField({ name, value, trouble, onWrite, ...rest }: LineFieldProps) {
  const [typed, setTyped] = useState<string>();
  const done = () => {
    if (typed !== undefined && typed !== value) onWrite(typed);
    setTyped(undefined);
  };
  return (
    <input
      className={CONTROL_CLASSES}
      aria-label={name}
      aria-invalid={trouble === undefined ? undefined : true}
      title={trouble}
      autoComplete="off"
      {...rest}
      data-typed={typed === undefined || typed === value ? undefined : ''}
      value={typed ?? value}
      onChange={(event) => setTyped(event.currentTarget.value)}
      onBlur={done}
      onKeyDown={(event) => {
        if (event.key === 'Enter') done();
        if (event.key !== 'Escape' || typed === undefined) return;
        event.preventDefault();
        setTyped(undefined);
      }}
    />
  );
}
