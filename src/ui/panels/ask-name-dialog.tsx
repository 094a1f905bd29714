import { type ReactNode, useId, useState } from 'react';
import { CAPS } from '#wire/caps.ts';
import { KIT_WORDS } from '#words/screens.ts';
import { Button } from '../kit/button.tsx';
import { Dialog } from '../kit/dialog.tsx';
import { Message, type Said } from '../kit/message.tsx';
import { TextField } from '../kit/text-field.tsx';

export interface AskNameDialogProps {
  readonly title: string;
  readonly label: string;
  readonly hint?: string;
  readonly submit: string;
  readonly initial?: string;
  readonly busy: boolean;
  readonly refused: Said | undefined;
  readonly onName: (name: string) => void;
  readonly onClose: () => void;
  /** More to choose, below the name. */
  readonly children?: ReactNode;
}

/** A question that is answered with a name. */
export function AskNameDialog(props: AskNameDialogProps) {
  const [name, setName] = useState(props.initial ?? '');
  const form = useId();
  const answers = (
    <>
      <Button onClick={props.onClose}>{KIT_WORDS.cancel}</Button>
      <Button type="submit" form={form} look="main" disabled={props.busy}>
        {props.submit}
      </Button>
    </>
  );
  return (
    <Dialog title={props.title} onClose={props.onClose} answers={answers}>
      <form
        id={form}
        className="flex flex-col gap-4"
        onSubmit={(event) => {
          event.preventDefault();
          props.onName(name);
        }}
      >
        <TextField
          label={props.label}
          hint={props.hint}
          required
          maxLength={CAPS.nameLength}
          value={name}
          onText={setName}
        />
        {props.children}
      </form>
      {props.refused === undefined ? null : <Message severity="blocker" said={props.refused} />}
    </Dialog>
  );
}
