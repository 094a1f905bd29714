import { useMutation } from '@tanstack/react-query';
import { useMemo, useState } from 'react';
import { ok } from '#base/result.ts';
import { isTakeable, type ProposalLine, proposalLines } from '#engine/diff/proposal.ts';
import type { Edit, Plan } from '#engine/model/edit.ts';
import type { Rig } from '#engine/model/rig.ts';
import { previewPlan } from '#engine/patch/preview-plan.ts';
import type { ProposalReceived } from '#wire/proposals.ts';
import { fateSentence, proposalSentence, receivedWords, PROPOSAL_WORDS as words } from '#words/proposals.ts';
import { KIT_WORDS } from '#words/screens.ts';
import { PREVIEW_WORDS } from '#words/sheet.ts';
import { Button } from '../../kit/button.tsx';
import { useTRPC } from '../../kit/data/trpc.tsx';
import { saidOf } from '../../kit/data/unreachable.ts';
import { Dialog } from '../../kit/dialog.tsx';
import { Message } from '../../kit/message.tsx';
import { TextField } from '../../kit/text-field.tsx';
import type { RigStore } from '../../live/rig-store.ts';
import { useCalmRig } from '../../live/use-calm-rig.ts';
import { Cautions } from '../../plant/cautions.tsx';
import { carryOutPlan } from '../../workspace/carry-out-plan.ts';
import { PreviewFindings } from '../../workspace/preview-findings.tsx';

export interface TakeProposalProps {
  readonly store: RigStore;
  readonly rigId: string;
  readonly proposal: ProposalReceived;
  /** The house rig as it was when this was worked out. */
  readonly base: Rig;
  readonly edits: readonly Edit[];
  readonly onClose: () => void;
}

/** A proposal as it meets the house rig as it is now: each part is taken or left; what others changed since is left unless one asks for it. */
export function TakeProposal({ store, rigId, proposal, base, edits, onClose }: TakeProposalProps) {
  const trpc = useTRPC();
  const now = useCalmRig(store);
  const lines = useMemo(() => proposalLines(base, now, edits), [base, now, edits]);
  // Only what somebody chose otherwise than it stands by itself.
  const [turned, setTurned] = useState<ReadonlySet<string>>(new Set());
  const [said, setSaid] = useState('');
  const [refused, setRefused] = useState<string>();
  const decide = useMutation(trpc.proposals.decide.mutationOptions({ onSuccess: onClose }));
  const isTaken = (line: ProposalLine) => isTakeable(line) && (line.fate === 'fits') !== turned.has(line.task.key);
  const taken = lines.filter(isTaken);
  const answer = (outcome: 'accepted' | 'declined') =>
    decide.mutate({ rigId, proposalId: proposal.id, outcome, words: said });
  const take = () => {
    const why = carryOutPlan(store, ok(planOf(taken)));
    setRefused(why);
    if (why === undefined) answer('accepted');
  };
  // What is so already may be what I took a moment ago, and the answer has not gone out.
  const mayTake = taken.length > 0 || lines.some(({ fate }) => fate === 'so-already');
  const answers = (
    <>
      <Button onClick={onClose}>{KIT_WORDS.cancel}</Button>
      <Button disabled={decide.isPending} onClick={() => answer('declined')}>
        {words.decline}
      </Button>
      <Button look="main" disabled={decide.isPending || !mayTake} onClick={take}>
        {words.take(taken.length)}
      </Button>
    </>
  );
  return (
    <Dialog title={receivedWords(proposal)} onClose={onClose} answers={answers} width="wide">
      {proposal.words === '' ? null : <p className="text-large">{proposal.words}</p>}
      <Cautions texts={[words.caution]} />
      <fieldset>
        <legend className="font-medium">{words.parts}</legend>
        <ul>
          {lines.map((line) => (
            <PartLine
              key={line.task.key}
              line={line}
              now={now}
              isTaken={isTaken(line)}
              onTurn={() => setTurned(toggled(turned, line.task.key))}
            />
          ))}
        </ul>
      </fieldset>
      {lines.some(isTakeable) || mayTake ? null : <p>{words.nothingLeft}</p>}
      <Effects now={now} taken={taken} />
      <TextField label={words.answer} value={said} maxLength={2000} onText={setSaid} />
      {refused === undefined ? null : <Message severity="blocker" said={{ what: refused }} />}
      {decide.error ? (
        <Message
          severity="blocker"
          said={{ ...saidOf(decide.error), ...(decide.variables?.outcome === 'accepted' ? { next: words.taken } : {}) }}
        />
      ) : null}
    </Dialog>
  );
}

const planOf = (lines: readonly ProposalLine[]): Plan => ({
  name: 'take-proposal',
  edits: lines.flatMap(({ task }) => task.edits),
});

function toggled(set: ReadonlySet<string>, key: string): ReadonlySet<string> {
  const next = new Set(set);
  if (!next.delete(key)) next.add(key);
  return next;
}

interface PartLineProps {
  readonly line: ProposalLine;
  readonly now: Rig;
  readonly isTaken: boolean;
  readonly onTurn: () => void;
}

function PartLine({ line, now, isTaken, onTurn }: PartLineProps) {
  const fate = fateSentence(line, now);
  return (
    <li className="border-b border-rule">
      <label className="flex min-h-11 items-center gap-3 py-1">
        <input
          type="checkbox"
          className="size-5 shrink-0 accent-ink"
          checked={isTaken}
          disabled={!isTakeable(line)}
          onChange={onTurn}
        />
        <span className="min-w-0 [overflow-wrap:anywhere]">
          {proposalSentence(line)}
          {fate === '' ? null : <span className="block text-soft">{fate}</span>}
        </span>
      </label>
    </li>
  );
}

/** The findings that taking these parts clears and raises. */
function Effects({ now, taken }: { readonly now: Rig; readonly taken: readonly ProposalLine[] }) {
  const key = taken.map(({ task }) => task.key).join('\n');
  // biome-ignore lint/correctness/useExhaustiveDependencies: the same parts by their keys are the same plan.
  const preview = useMemo(() => previewPlan(now, planOf(taken)), [now, key]);
  const { findingsAdded, findingsRemoved } = preview;
  return (
    <>
      <PreviewFindings title={PREVIEW_WORDS.cleared(findingsRemoved.length)} findings={findingsRemoved} rig={now} />
      <PreviewFindings title={PREVIEW_WORDS.raised(findingsAdded.length)} findings={findingsAdded} rig={preview.rig} />
    </>
  );
}
