import { useId, useMemo } from 'react';
import { rowsOf } from '#base/table.ts';
import { PERSON_FIELDS, type PersonField } from '#engine/model/field.ts';
import { foldName } from '#engine/model/ids.ts';
import { compareNatural } from '#engine/model/natural-order.ts';
import type { Rig } from '#engine/model/rig.ts';
import type { HistoryPerson } from '#wire/history.ts';
import { FIELD_WORDS, unitName } from '#words/findings.ts';
import { HISTORY_WORDS, HISTORY_FILTER_WORDS as words } from '#words/history.ts';
import { Button } from '../../kit/button.tsx';
import { Select } from '../../kit/select.tsx';
import { TextField } from '../../kit/text-field.tsx';
import { PHONE, useMedia } from '../../workspace/use-media.ts';
import type { Asked } from './asked-history.ts';

export interface HistoryFilterProps {
  readonly rig: Rig;
  readonly people: readonly HistoryPerson[];
  readonly asked: Asked;
  readonly onAsk: (asked: Asked) => void;
}

const NAMES_OFFERED = 1_000;

/** Asks for less of a history: by unit, cell, person and day. On a phone it folds away. */
export function HistoryFilterBar(props: HistoryFilterProps) {
  const { asked, onAsk } = props;
  const phone = useMedia(PHONE);
  const on = asked.unit !== '' || asked.field !== '' || asked.person !== '' || asked.from !== '' || asked.to !== '';
  return (
    <search aria-label={words.name}>
      {phone ? (
        <details open={on}>
          <summary className="flex min-h-control cursor-pointer items-center underline decoration-edge underline-offset-[0.2em]">
            {words.name}
          </summary>
          <Fields {...props} />
        </details>
      ) : (
        <Fields {...props} />
      )}
      {on ? (
        <Button className="mt-2" onClick={() => onAsk({ unit: '', field: '', person: '', from: '', to: '' })}>
          {words.clear}
        </Button>
      ) : null}
    </search>
  );
}

function Fields({ rig, people, asked, onAsk }: HistoryFilterProps) {
  const list = useId();
  const names = useMemo(() => unitNames(rig), [rig]);
  const known = names.some((name) => foldName(name) === foldName(asked.unit));
  return (
    <div className="grid items-start gap-3 sm:grid-cols-[minmax(12rem,20rem)_repeat(4,minmax(8rem,12rem))]">
      <TextField
        label={words.unit}
        hint={known ? words.chosenUnit : words.unitHint}
        value={asked.unit}
        list={list}
        autoComplete="off"
        onText={(unit) => onAsk({ ...asked, unit })}
      />
      <datalist id={list}>
        {names.slice(0, NAMES_OFFERED).map((name) => (
          <option key={name} value={name} />
        ))}
      </datalist>
      <Select
        label={words.cell}
        choices={[{ value: '', label: words.anyCell }, ...CELLS]}
        value={asked.field}
        onChoose={(field) => onAsk({ ...asked, field })}
      />
      <Select
        label={words.person}
        choices={[
          { value: '', label: words.anybody },
          ...people.map(({ id, name }) => ({ value: id, label: name ?? HISTORY_WORDS.somebody })),
        ]}
        value={asked.person}
        onChoose={(person) => onAsk({ ...asked, person })}
      />
      <TextField label={words.from} type="date" value={asked.from} onText={(from) => onAsk({ ...asked, from })} />
      <TextField label={words.to} type="date" value={asked.to} onText={(to) => onAsk({ ...asked, to })} />
    </div>
  );
}

const CELLS = PERSON_FIELDS.map((field): { readonly value: PersonField | ''; readonly label: string } => ({
  value: field,
  label: FIELD_WORDS[field],
}));

const unitNames = (rig: Rig): readonly string[] =>
  [...new Set([...rowsOf(rig.fixtures)].map(unitName))].sort(compareNatural);
