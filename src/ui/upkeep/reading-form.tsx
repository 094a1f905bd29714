import { useState } from 'react';
import { randomId } from '#base/random-id.ts';
import { getRow } from '#base/table.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import type { Reading } from '#engine/model/record.ts';
import { noteReading } from '#engine/patch/upkeep/note-reading.ts';
import { unitName } from '#words/findings.ts';
import { UPKEEP_WORDS as words } from '#words/upkeep.ts';
import { Button } from '../kit/button.tsx';
import { Select } from '../kit/select.tsx';
import { TextField } from '../kit/text-field.tsx';
import type { RigStore } from '../live/rig-store.ts';
import { RefusedLine } from '../plant/refused-line.tsx';
import { carryOutPlan } from '../workspace/carry-out-plan.ts';
import { PersonDayFields, usePersonDay } from './person-day.tsx';

export interface ReadingFormProps {
  readonly store: RigStore;
  /** The unit that was read; undefined while no one unit is named. */
  readonly unit: FixtureId | undefined;
  /** What is said when there is none. */
  readonly noUnit?: string | undefined;
}

const KINDS: readonly Reading['of'][] = ['lamp', 'service', 'firmware'];

/** Hours or a firmware as a unit shows them, written down in one line. */
export function ReadingForm({ store, unit, noUnit }: ReadingFormProps) {
  const [of, setOf] = useState<Reading['of']>('lamp');
  const [text, setText] = useState('');
  const [cell, setCell] = useState<'written' | 'left'>('written');
  const [who, setWho] = usePersonDay();
  const [refused, setRefused] = useState<string>();
  const note = () => {
    if (unit === undefined) return setRefused(noUnit ?? words.noUnit);
    const called = unitName(getRow(store.rig().fixtures, unit));
    const why = carryOutPlan(store, noteReading(store.rig(), { id: randomId(), unit, called, of, text, cell, ...who }));
    setRefused(why);
    if (why === undefined) setText('');
  };
  return (
    <form
      className="flex flex-col gap-2"
      onSubmit={(event) => {
        event.preventDefault();
        note();
      }}
    >
      <div className="grid grid-cols-[repeat(auto-fit,minmax(9rem,1fr))] items-end gap-2">
        <Select
          label={words.of}
          choices={KINDS.map((kind) => ({ value: kind, label: words.ofWords[kind] }))}
          value={of}
          onChoose={setOf}
        />
        <TextField
          label={words.value[of]}
          inputMode={of === 'firmware' ? 'text' : 'decimal'}
          autoComplete="off"
          value={text}
          onText={setText}
        />
        <PersonDayFields label={words.who} value={who} onValue={setWho} />
        <div>
          <Button type="submit">{words.noteWord}</Button>
        </div>
      </div>
      {of === 'firmware' ? (
        <label className="inline-flex min-h-control items-center gap-2">
          <input
            type="checkbox"
            className="size-4 accent-ink"
            checked={cell === 'written'}
            onChange={(event) => setCell(event.currentTarget.checked ? 'written' : 'left')}
          />
          {words.toUnit}
        </label>
      ) : null}
      <RefusedLine why={refused} />
    </form>
  );
}
