import { type FormEvent, useId, useState, useSyncExternalStore } from 'react';
import { type DraftTrouble, stopsPublishing } from '#engine/draft/draft-trouble.ts';
import { PUBLISH_WORDS } from '#words/draft-screen.ts';
import { Button } from '../kit/button.tsx';
import { Dialog } from '../kit/dialog.tsx';
import { Mark } from '../kit/mark.tsx';
import { Message } from '../kit/message.tsx';
import { TextField } from '../kit/text-field.tsx';
import { guessesIn } from './chart/chart-actions.ts';
import type { Desk } from './desk.ts';
import type { Doors } from './doors.ts';
import { TroubleList } from './trouble-list.tsx';
import { useReading } from './use-desk.ts';

export interface PublishDialogProps {
  readonly desk: Desk;
  readonly door: Doors['publish'];
  readonly onGo: (trouble: DraftTrouble) => void;
}

/** Asks for a note, and shows what stops it and what only warns. */
export function PublishDialog({ desk, door, onGo }: PublishDialogProps) {
  const id = useId();
  const { draft, troubles } = useReading(desk.store);
  const [note, setNote] = useState('');
  const stops = troubles.filter(stopsPublishing);
  const warns = troubles.filter((trouble) => !stopsPublishing(trouble));
  const guesses = draft.modes.reduce((sum, mode) => sum + guessesIn(mode).length, 0);
  // The server publishes what it has.
  const isSaved = useSyncExternalStore(desk.store.subscribeLink, () => desk.store.status().state === 'saved');
  const isReady = stops.length === 0 && isSaved && !door.busy;
  const close = () => desk.set({ window: undefined });
  const go = (trouble: DraftTrouble) => {
    close();
    onGo(trouble);
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (isReady) door.ask(note.trim());
  };
  const answers = (
    <>
      <Button onClick={close}>{PUBLISH_WORDS.close}</Button>
      <Button look="main" type="submit" form={id} disabled={!isReady}>
        {PUBLISH_WORDS.submit}
      </Button>
    </>
  );
  return (
    <Dialog title={PUBLISH_WORDS.title} onClose={close} answers={answers}>
      {stops.length === 0 ? (
        <form id={id} className="flex flex-col gap-3" onSubmit={submit}>
          <p>{PUBLISH_WORDS.about}</p>
          <TextField label={PUBLISH_WORDS.note} value={note} maxLength={500} onText={setNote} />
          {isSaved ? null : <p role="status">{PUBLISH_WORDS.unsaved}</p>}
        </form>
      ) : (
        <section>
          <h3>{PUBLISH_WORDS.stops}</h3>
          <TroubleList draft={draft} troubles={stops} onGo={go} />
        </section>
      )}
      {warns.length + guesses === 0 ? null : (
        <section>
          <h3>{PUBLISH_WORDS.warns}</h3>
          {guesses === 0 ? null : (
            <p>
              <Mark severity="caution" /> {PUBLISH_WORDS.guesses(guesses)}
            </p>
          )}
          <TroubleList draft={draft} troubles={warns} onGo={go} />
        </section>
      )}
      {door.refused === undefined ? null : <Message severity="blocker" said={door.refused} />}
    </Dialog>
  );
}
