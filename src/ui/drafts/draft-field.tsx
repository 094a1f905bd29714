import { type KeyboardEvent, useId, useState, useSyncExternalStore } from 'react';
import { PersonTag } from '../grid/person-tag.tsx';
import { CONTROL_CLASSES, describedBy, FieldFrame } from '../kit/field-frame.tsx';
import type { DraftStore } from '../live/draft-store.ts';
import { useWritable } from './use-desk.ts';

export interface DraftFieldProps {
  readonly store: DraftStore;
  readonly label: string;
  readonly hint?: string | undefined;
  readonly error?: string | undefined;
  /** What stands in the draft. */
  readonly value: string;
  readonly onWrite: (text: string) => void;
  /** What others see of where I am. */
  readonly where: { readonly fixture: string; readonly field: string };
  /** Lines; 1 where it is left out. */
  readonly lines?: number;
}

/**
 * A cell of a draft as a field of a form. It is written when one leaves it, or with Enter: one step to take back, however
 * long the text.
 */
export function DraftField({ store, label, hint, error, value, onWrite, where, lines = 1 }: DraftFieldProps) {
  const id = useId();
  const [typed, setTyped] = useState<string>();
  const writable = useWritable(store);
  const people = useSyncExternalStore(store.subscribeLink, store.people);
  const here = people.filter((each) => each.where?.fixture === where.fixture && each.where.field === where.field);
  const finish = () => {
    if (typed !== undefined && typed !== value) onWrite(typed);
    setTyped(undefined);
  };
  const press = (event: KeyboardEvent) => {
    if (event.nativeEvent.isComposing) return;
    if (event.key === 'Enter' && lines === 1) finish();
    if (event.key !== 'Escape') return;
    event.stopPropagation();
    setTyped(undefined);
  };
  const control = {
    id,
    value: typed ?? value,
    readOnly: !writable,
    'aria-invalid': error === undefined ? undefined : true,
    'aria-describedby': describedBy({ id, hint, error }),
    'data-field': where.fixture === 'facts' ? where.field : `mode-${where.field}`,
    spellCheck: false,
    autoComplete: 'off',
    onChange: (event: { readonly currentTarget: { readonly value: string } }) => setTyped(event.currentTarget.value),
    onFocus: () => store.setWhere(where),
    onBlur: finish,
    onKeyDown: press,
  };
  return (
    <FieldFrame id={id} label={label} hint={hint} error={error}>
      <span className="relative block">
        {lines === 1 ? (
          <input className={CONTROL_CLASSES} {...control} />
        ) : (
          <textarea rows={lines} className={`${CONTROL_CLASSES} py-1`} {...control} />
        )}
        {here.map((person) => (
          <PersonTag key={person.id} person={person} inset="edge" />
        ))}
      </span>
    </FieldFrame>
  );
}
