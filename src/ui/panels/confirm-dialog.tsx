import { KIT_WORDS } from '#words/screens.ts';
import { Button } from '../kit/button.tsx';
import { Dialog } from '../kit/dialog.tsx';
import { Message, type Said } from '../kit/message.tsx';

export interface ConfirmDialogProps {
  readonly title: string;
  readonly about: string;
  readonly submit: string;
  readonly busy: boolean;
  readonly refused: Said | undefined;
  readonly onConfirm: () => void;
  readonly onClose: () => void;
}

/** Asks before something is taken away. */
export function ConfirmDialog({ title, about, submit, busy, refused, onConfirm, onClose }: ConfirmDialogProps) {
  const answers = (
    <>
      <Button onClick={onClose}>{KIT_WORDS.cancel}</Button>
      <Button look="danger" onClick={onConfirm} disabled={busy}>
        {submit}
      </Button>
    </>
  );
  return (
    <Dialog title={title} onClose={onClose} answers={answers}>
      <p>{about}</p>
      {refused === undefined ? null : <Message severity="blocker" said={refused} />}
    </Dialog>
  );
}
