import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import type { RigSummary } from '#wire/rigs.ts';
import { OFFER_WORDS as words } from '#words/handovers.ts';
import { KIT_WORDS, sayDay } from '#words/screens.ts';
import { Button } from '../../kit/button.tsx';
import { useTRPC } from '../../kit/data/trpc.tsx';
import { saidOf } from '../../kit/data/unreachable.ts';
import { Dialog } from '../../kit/dialog.tsx';
import { Message } from '../../kit/message.tsx';
import { TextField } from '../../kit/text-field.tsx';
import { CopyLine } from '../crew/copy-line.tsx';
import { saveHandover } from './send-handover.ts';

export interface OfferDialogProps {
  readonly rig: RigSummary;
  readonly number: number;
  readonly onClose: () => void;
}

/** Asks what to say, and makes a link, shown this once, or a file. */
export function OfferDialog({ rig, number, onClose }: OfferDialogProps) {
  const [said, setSaid] = useState('');
  const offer = useMutation(useTRPC().handovers.offer.mutationOptions());
  const file = useMutation({ mutationFn: () => saveHandover(rig, number, said) });
  if (offer.data) {
    const close = <Button onClick={onClose}>{KIT_WORDS.close}</Button>;
    return (
      <Dialog title={words.ready} onClose={onClose} answers={close}>
        <CopyLine
          label={words.link}
          hint={words.linkHint(sayDay(offer.data.expiresAt))}
          text={window.location.origin + offer.data.path}
        />
      </Dialog>
    );
  }
  const busy = offer.isPending || file.isPending;
  const answers = (
    <>
      <Button onClick={onClose}>{file.data === undefined ? KIT_WORDS.cancel : KIT_WORDS.close}</Button>
      <Button disabled={busy} onClick={() => file.mutate()}>
        {words.saveFile}
      </Button>
      <Button look="main" disabled={busy} onClick={() => offer.mutate({ rigId: rig.id, number, words: said })}>
        {words.makeLink}
      </Button>
    </>
  );
  const failed = offer.error ?? file.error;
  return (
    <Dialog title={words.title(number)} onClose={onClose} answers={answers}>
      <p>{words.about}</p>
      <TextField label={words.words} hint={words.wordsHint} maxLength={2000} value={said} onText={setSaid} />
      <p className="text-soft">{words.fileAbout}</p>
      {file.data === undefined ? null : <Message severity="note" said={{ what: words.saved(file.data) }} />}
      {failed === null ? null : <Message severity="blocker" said={saidOf(failed)} />}
    </Dialog>
  );
}
