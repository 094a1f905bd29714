import { useId, useState } from 'react';
import { TYPED_WORDS } from '#words/crew.ts';
import { KIT_WORDS } from '#words/screens.ts';
import { Button } from '../kit/button.tsx';
import { Dialog } from '../kit/dialog.tsx';
import { Message } from '../kit/message.tsx';
import { TextField } from '../kit/text-field.tsx';
import type { ConfirmDialogProps } from './confirm-dialog.tsx';

export interface TypedConfirmDialogProps extends Omit<ConfirmDialogProps, 'onConfirm'> {
  /** What has to be typed: the name of what is taken away. */
  readonly name: string;
  readonly onConfirm: (typed: string) => void;
}

/** Asks before something large is taken away, and wants its name typed: no slip of a finger does that. */
export function TypedConfirmDialog(props: TypedConfirmDialogProps) {
  const { title, about, submit, name, busy, refused, onConfirm, onClose } = props;
  const form = useId();
  const [typed, setTyped] = useState('');
  const [unlike, setUnlike] = useState(false);
  const answers = (
    <>
      <Button onClick={onClose}>{KIT_WORDS.cancel}</Button>
      <Button type="submit" form={form} look="danger" disabled={busy}>
        {submit}
      </Button>
    </>
  );
  return (
    <Dialog title={title} onClose={onClose} answers={answers}>
      <p>{about}</p>
      <form
        id={form}
        onSubmit={(event) => {
          event.preventDefault();
          if (tidy(typed) === tidy(name)) onConfirm(name);
          else setUnlike(true);
        }}
      >
        <TextField
          label={TYPED_WORDS.label(name)}
          error={unlike ? TYPED_WORDS.unlike : undefined}
          autoComplete="off"
          value={typed}
          onText={(text) => {
            setTyped(text);
            setUnlike(false);
          }}
        />
      </form>
      {refused === undefined ? null : <Message severity="blocker" said={refused} />}
    </Dialog>
  );
}

/** Names hold no white space that is not seen; whoever types one may. */
const tidy = (text: string) => text.normalize('NFC').replace(/\s+/gu, ' ').trim();
