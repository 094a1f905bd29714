import { type FormEvent, useId, useState } from 'react';
import type { DraftMode, DraftRow } from '#engine/draft/draft.ts';
import { repeatRows, unrepeat } from '#engine/draft/draft-plans.ts';
import { readSlots } from '#engine/draft/slots-text.ts';
import { DRAFT_SCREEN_WORDS, REPEAT_WORDS } from '#words/draft-screen.ts';
import { Button } from '../../kit/button.tsx';
import { Dialog } from '../../kit/dialog.tsx';
import { TextField } from '../../kit/text-field.tsx';
import type { Desk } from '../desk.ts';
import { carryOut, selectedBlock } from './chart-actions.ts';

/** Lets the selected rows come several times, or changes the repeat that all of them are in. */
export function RepeatDialog({ desk }: { readonly desk: Desk }) {
  const mode = desk.mode();
  const [rows] = useState(() => selectedBlock(desk).rows);
  const [first] = rows;
  if (mode === undefined || first === undefined) return null;
  const shared = rows.every((row) => row.repeat === first.repeat) ? first.repeat : '';
  const repeat = mode.repeats.find((each) => each.id === shared);
  const members = repeat === undefined ? rows : mode.rows.filter((row) => row.repeat === repeat.id);
  return <RepeatForm desk={desk} mode={mode} rows={members} repeat={repeat} />;
}

interface RepeatFormProps {
  readonly desk: Desk;
  readonly mode: DraftMode;
  readonly rows: readonly DraftRow[];
  readonly repeat: DraftMode['repeats'][number] | undefined;
}

function RepeatForm({ desk, mode, rows, repeat }: RepeatFormProps) {
  const id = useId();
  const [count, setCount] = useState(repeat?.count ?? '');
  const [name, setName] = useState(repeat?.name ?? '');
  const [step, setStep] = useState(repeat?.step ?? '');
  const [asked, setAsked] = useState(false);
  const badCount = !isWhole(count, 2);
  const badStep = step.trim() !== '' && !isWhole(step, 1);
  const close = () => desk.set({ window: undefined });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    setAsked(true);
    if (badCount || badStep) return;
    close();
    carryOut(desk, repeatEdits({ desk, mode, rows, repeat }, { count, name, step }));
  };
  const answers = (
    <>
      {repeat === undefined ? null : (
        <Button
          onClick={() => {
            close();
            carryOut(desk, unrepeat(desk.store.reading().draft, mode.id, repeat.id));
          }}
        >
          {REPEAT_WORDS.once}
        </Button>
      )}
      <Button onClick={close}>{DRAFT_SCREEN_WORDS.leave}</Button>
      <Button look="main" type="submit" form={id}>
        {repeat === undefined ? REPEAT_WORDS.submit : REPEAT_WORDS.change}
      </Button>
    </>
  );
  const title = repeat === undefined ? REPEAT_WORDS.title(rows.length) : REPEAT_WORDS.changeTitle;
  return (
    <Dialog title={title} onClose={close} answers={answers}>
      <form id={id} className="flex flex-col gap-3" onSubmit={submit}>
        <TextField
          label={REPEAT_WORDS.count}
          error={asked && badCount ? REPEAT_WORDS.badCount : undefined}
          value={count}
          inputMode="numeric"
          onText={setCount}
        />
        <TextField label={REPEAT_WORDS.name} hint={REPEAT_WORDS.nameHint} value={name} onText={setName} />
        <TextField
          label={REPEAT_WORDS.step}
          hint={REPEAT_WORDS.stepHint(widthOf(rows))}
          error={asked && badStep ? REPEAT_WORDS.badStep : undefined}
          value={step}
          inputMode="numeric"
          onText={setStep}
        />
        <p className="text-soft">{REPEAT_WORDS.about}</p>
      </form>
    </Dialog>
  );
}

const isWhole = (text: string, least: number) =>
  /^\s*\d{1,3}\s*$/.test(text) && Number(text) >= least && Number(text) <= 512;

/** Slots that the rows span. */
function widthOf(rows: readonly DraftRow[]): number {
  const slots = rows.flatMap((row) => readSlots(row.slots) ?? []);
  return slots.length === 0 ? 0 : Math.max(...slots) - Math.min(...slots) + 1;
}

function repeatEdits(
  { desk, mode, rows, repeat }: RepeatFormProps,
  said: { readonly count: string; readonly name: string; readonly step: string },
) {
  const fields = { count: said.count.trim(), name: said.name.trim(), step: said.step.trim() };
  const set = (of: string, names: readonly (keyof typeof fields)[]) =>
    names.map((field) => ({ of: 'repeat', mode: mode.id, repeat: of, field, value: fields[field] }) as const);
  if (repeat !== undefined) return set(repeat.id, ['count', 'name', 'step']);
  const id = desk.makeId();
  const ids = rows.map((row) => row.id);
  const cells = { count: Number(fields.count), name: fields.name };
  return [...repeatRows(desk.store.reading().draft, mode.id, ids, cells, () => id), ...set(id, ['step'])];
}
