import { useState } from 'react';
import { UPKEEP_WORDS as words } from '#words/upkeep.ts';
import { TextField } from '../kit/text-field.tsx';
import { today } from '../kit/today.ts';
import { useMyName } from '../live/my-name.ts';

/** Who did something and on which day: me and today, unless somebody else is typed. */
export interface PersonDay {
  readonly by: string;
  readonly on: string;
}

export function usePersonDay(): readonly [PersonDay, (next: PersonDay) => void] {
  const me = useMyName();
  const [typed, setTyped] = useState<PersonDay>();
  return [typed ?? { by: me, on: today() }, setTyped];
}

export interface PersonDayFieldsProps {
  readonly label: string;
  readonly value: PersonDay;
  readonly onValue: (value: PersonDay) => void;
}

/** Who and when, side by side. */
export function PersonDayFields({ label, value, onValue }: PersonDayFieldsProps) {
  return (
    <>
      <TextField label={label} autoComplete="off" value={value.by} onText={(by) => onValue({ ...value, by })} />
      <TextField label={words.on} type="date" value={value.on} onText={(on) => onValue({ ...value, on })} />
    </>
  );
}
