import { useState } from 'react';
import type { RigRevisionSummary } from '#wire/record.ts';
import type { RigSummary } from '#wire/rigs.ts';
import { provenanceSentence, REVISIONS_WORDS as words } from '#words/revisions.ts';
import { Button } from '../../kit/button.tsx';
import { Message } from '../../kit/message.tsx';
import { useOpenRig } from '../../live/open-rig.tsx';
import { Part } from '../part.tsx';
import { FreezeDialog } from './freeze-dialog.tsx';
import { RevisionRow } from './revision-row.tsx';
import { StartRigDialog } from './start-rig-dialog.tsx';

export interface RevisionListProps {
  readonly rig: RigSummary;
  /** Newest first. */
  readonly revisions: readonly RigRevisionSummary[];
}

type Question = { readonly ask: 'freeze' } | { readonly ask: 'start'; readonly number: number };

/** Every revision of a rig, the newest first, and the ways on from it. */
export function RevisionList({ rig, revisions }: RevisionListProps) {
  const store = useOpenRig();
  const [question, setQuestion] = useState<Question>();
  const [frozen, setFrozen] = useState<number>();
  const close = () => setQuestion(undefined);
  const freeze =
    rig.role === 'reader' || store === undefined ? null : (
      <Button look="main" onClick={() => setQuestion({ ask: 'freeze' })}>
        {words.freeze}
      </Button>
    );
  return (
    <Part title={words.title} actions={freeze}>
      <div className="flex max-w-prose flex-col gap-1 py-2">
        <p className="text-soft">{words.about}</p>
        {rig.startedFrom === null ? null : <p>{provenanceSentence(rig.startedFrom)}</p>}
        {frozen === undefined ? null : <Message severity="note" said={{ what: words.frozen(frozen) }} />}
        {revisions.length === 0 ? <p>{words.none}</p> : null}
      </div>
      <ol>
        {revisions.map((revision, at) => (
          <RevisionRow
            key={revision.number}
            rig={rig}
            revision={revision}
            previous={revisions[at + 1]?.number}
            onStart={() => setQuestion({ ask: 'start', number: revision.number })}
          />
        ))}
      </ol>
      {question?.ask === 'freeze' && store !== undefined ? (
        <FreezeDialog store={store} rigId={rig.id} onFrozen={setFrozen} onClose={close} />
      ) : null}
      {question?.ask === 'start' ? <StartRigDialog rig={rig} number={question.number} onClose={close} /> : null}
    </Part>
  );
}
