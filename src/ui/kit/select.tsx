import { useId } from 'react';
import { CONTROL_CLASSES, describedBy, FieldFrame } from './field-frame.tsx';

interface Choice<Value extends string> {
  readonly value: Value;
  readonly label: string;
}

export interface SelectProps<Value extends string> {
  readonly label: string;
  readonly hint?: string | undefined;
  readonly error?: string | undefined;
  readonly choices: readonly Choice<Value>[];
  readonly value: Value;
  readonly onChoose: (value: Value) => void;
  readonly disabled?: boolean;
}

/** One of a few named choices, as the device's own list. */
export function Select<Value extends string>({ label, hint, error, ...rest }: SelectProps<Value>) {
  const id = useId();
  return (
    <FieldFrame id={id} label={label} hint={hint} error={error}>
      <BareSelect id={id} describedBy={describedBy({ id, hint, error })} {...rest} />
    </FieldFrame>
  );
}

export interface BareSelectProps<Value extends string>
  extends Pick<SelectProps<Value>, 'choices' | 'value' | 'onChoose' | 'disabled'> {
  readonly id?: string;
  /** What a screen reader calls it, where no visible label stands beside it. */
  readonly name?: string;
  readonly describedBy?: string | undefined;
}

/** The list alone, for a table's cell. */
export function BareSelect<Value extends string>(props: BareSelectProps<Value>) {
  const { id, name, choices, value, onChoose, disabled } = props;
  return (
    <select
      id={id}
      aria-label={name}
      aria-describedby={props.describedBy}
      className={CONTROL_CLASSES}
      value={value}
      disabled={disabled}
      onChange={(event) => {
        const chosen = choices.find((choice) => choice.value === event.currentTarget.value);
        if (chosen) onChoose(chosen.value);
      }}
    >
      {choices.map((choice) => (
        <option key={choice.value} value={choice.value}>
          {choice.label}
        </option>
      ))}
    </select>
  );
}
