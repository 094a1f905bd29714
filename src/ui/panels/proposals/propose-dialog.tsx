import { useMutation } from '@tanstack/react-query';
import { useMemo, useState } from 'react';
import { proposalEdits, proposalLines } from '#engine/diff/proposal.ts';
import type { RestoreLine } from '#engine/diff/restore.ts';
import type { Rig } from '#engine/model/rig.ts';
import { CAPS } from '#wire/caps.ts';
import { proposalSentence, PROPOSAL_WORDS as words } from '#words/proposals.ts';
import { KIT_WORDS } from '#words/screens.ts';
import { Button } from '../../kit/button.tsx';
import { useTRPC } from '../../kit/data/trpc.tsx';
import { saidOf } from '../../kit/data/unreachable.ts';
import { Dialog } from '../../kit/dialog.tsx';
import { Message } from '../../kit/message.tsx';
import { TextField } from '../../kit/text-field.tsx';

export interface ProposeDialogProps {
  readonly rigId: string;
  /** The house rig, and the revision of it that `house` is. */
  readonly to: { readonly rigId: string; readonly number: number };
  readonly show: Rig;
  readonly house: Rig;
  readonly stays: readonly RestoreLine[];
  readonly onClose: () => void;
}

/** Lines that are written out. */
const MOST = 50;

/** What the record of the house would say, before it is laid before its crew. */
export function ProposeDialog({ rigId, to, show, house, stays, onClose }: ProposeDialogProps) {
  const trpc = useTRPC();
  const [said, setSaid] = useState('');
  const propose = useMutation(trpc.proposals.make.mutationOptions({ onSuccess: onClose }));
  const edits = useMemo(
    () => proposalEdits(house, show, new Set(stays.map(({ task }) => task.key))),
    [house, show, stays],
  );
  const lines = useMemo(() => proposalLines(house, house, edits), [house, edits]);
  const isTooLarge = edits.length > CAPS.proposalEdits || JSON.stringify(edits).length > CAPS.proposalText;
  const submit = () => propose.mutate({ rigId, houseId: to.rigId, number: to.number, words: said, edits: [...edits] });
  const answers = (
    <>
      <Button onClick={onClose}>{KIT_WORDS.cancel}</Button>
      <Button look="main" disabled={propose.isPending || isTooLarge || edits.length === 0} onClick={submit}>
        {words.submit}
      </Button>
    </>
  );
  return (
    <Dialog title={words.proposeTitle} onClose={onClose} answers={answers}>
      <p>{words.proposeAbout(stays.length)}</p>
      <ul>
        {lines.slice(0, MOST).map((line) => (
          <li key={line.task.key} className="border-b border-rule py-1">
            {proposalSentence(line)}
          </li>
        ))}
      </ul>
      {lines.length > MOST ? <p className="text-soft">{words.more(lines.length - MOST)}</p> : null}
      {isTooLarge ? <Message severity="caution" said={{ what: words.tooLarge }} /> : null}
      <TextField label={words.words} value={said} maxLength={2000} onText={setSaid} />
      {propose.error ? <Message severity="blocker" said={saidOf(propose.error)} /> : null}
    </Dialog>
  );
}
