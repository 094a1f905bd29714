import { type ComponentProps, useId } from 'react';
import { CONTROL_CLASSES, describedBy, FieldFrame } from './field-frame.tsx';

export interface TextFieldProps extends Omit<ComponentProps<'input'>, 'onChange' | 'value' | 'id'> {
  readonly label: string;
  readonly hint?: string | undefined;
  readonly error?: string | undefined;
  readonly value: string;
  readonly onText: (text: string) => void;
}

/** One line of text with its label, a hint and what is wrong with it. */
export function TextField({ label, hint, error, onText, ...rest }: TextFieldProps) {
  const id = useId();
  return (
    <FieldFrame id={id} label={label} hint={hint} error={error}>
      <input
        id={id}
        className={CONTROL_CLASSES}
        aria-invalid={error === undefined ? undefined : true}
        aria-describedby={describedBy({ id, hint, error })}
        onChange={(event) => onText(event.currentTarget.value)}
        {...rest}
      />
    </FieldFrame>
  );
}
