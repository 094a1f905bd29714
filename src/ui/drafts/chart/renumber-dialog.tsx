import { type FormEvent, useId, useState } from 'react';
import { renumberFrom } from '#engine/draft/draft-plans.ts';
import { DRAFT_SCREEN_WORDS, RENUMBER_WORDS } from '#words/draft-screen.ts';
import { Button } from '../../kit/button.tsx';
import { Dialog } from '../../kit/dialog.tsx';
import { TextField } from '../../kit/text-field.tsx';
import type { Desk } from '../desk.ts';
import { carryOut, selectedBlock } from './chart-actions.ts';

/** Moves the slots of a row and of those of its break below it. */
export function RenumberDialog({ desk }: { readonly desk: Desk }) {
  const id = useId();
  const mode = desk.mode();
  const [row] = selectedBlock(desk).rows;
  const [first, setFirst] = useState('');
  const [asked, setAsked] = useState(false);
  const bad = !/^\s*\d{1,3}\s*$/.test(first) || Number(first) < 1 || Number(first) > 512;
  if (mode === undefined || row === undefined) return null;
  const close = () => desk.set({ window: undefined });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    setAsked(true);
    if (bad) return;
    close();
    const edits = renumberFrom(desk.store.reading().draft, mode.id, row.id, Number(first));
    if (edits.length === 0) desk.set({ notice: { kind: 'not-renumbered' } });
    else carryOut(desk, edits);
  };
  const answers = (
    <>
      <Button onClick={close}>{DRAFT_SCREEN_WORDS.leave}</Button>
      <Button look="main" type="submit" form={id}>
        {RENUMBER_WORDS.submit}
      </Button>
    </>
  );
  return (
    <Dialog title={RENUMBER_WORDS.title} onClose={close} answers={answers}>
      <form id={id} className="flex flex-col gap-3" onSubmit={submit}>
        <p>{RENUMBER_WORDS.about}</p>
        <TextField
          label={RENUMBER_WORDS.first}
          error={asked && bad ? RENUMBER_WORDS.bad : undefined}
          value={first}
          inputMode="numeric"
          onText={setFirst}
        />
      </form>
    </Dialog>
  );
}
