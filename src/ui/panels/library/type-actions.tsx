import { useMutation } from '@tanstack/react-query';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import type { CrewDetail } from '#wire/crews.ts';
import { type TypeDetails, typeFilePath } from '#wire/library.ts';
import { TYPE_WORDS } from '#words/library.ts';
import { Button } from '../../kit/button.tsx';
import { useTRPC } from '../../kit/data/trpc.tsx';
import { saidOf } from '../../kit/data/unreachable.ts';
import { Message } from '../../kit/message.tsx';
import { LINK_CLASSES } from '../../kit/text-link.tsx';
import { ConfirmDialog } from '../confirm-dialog.tsx';
import { libraryPath } from './library-address.ts';
import { useOpenDraft } from './use-open-draft.ts';

export interface TypeActionsProps {
  readonly crew: CrewDetail;
  readonly details: TypeDetails;
}

/** What one does with a type: change it, save it as a file, take it out. Readers save it only. */
export function TypeActions({ crew, details: { summary, newest } }: TypeActionsProps) {
  const { open, busy, refused } = useOpenDraft(crew.id);
  const [removing, setRemoving] = useState(false);
  const builtIn = summary.origin === 'built-in';
  const writes = crew.role !== 'reader';
  return (
    <div className="flex flex-col gap-2">
      <div className="flex flex-wrap items-center gap-x-5 gap-y-2">
        {writes ? (
          <Button look="main" onClick={() => open(summary.id)} disabled={busy}>
            {builtIn ? TYPE_WORDS.changeBuiltIn : TYPE_WORDS.change}
          </Button>
        ) : null}
        {/* Not a page of ours: the browser asks the server and saves the answer. */}
        <a href={typeFilePath(crew.id, summary.id, newest.number)} download className={LINK_CLASSES}>
          {TYPE_WORDS.save}
        </a>
        {writes && !builtIn ? (
          <Button look="danger" onClick={() => setRemoving(true)} className="sm:ml-auto">
            {TYPE_WORDS.remove}
          </Button>
        ) : null}
      </div>
      {builtIn ? <p className="text-soft">{TYPE_WORDS.builtInAbout}</p> : null}
      {refused === undefined ? null : <Message severity="blocker" said={refused} />}
      {removing ? (
        <RemoveType
          crewId={crew.id}
          typeId={summary.id}
          name={`${summary.maker} ${summary.model}`}
          onClose={() => setRemoving(false)}
        />
      ) : null}
    </div>
  );
}

interface RemoveTypeProps {
  readonly crewId: string;
  readonly typeId: string;
  readonly name: string;
  readonly onClose: () => void;
}

function RemoveType({ crewId, typeId, name, onClose }: RemoveTypeProps) {
  const router = useRouter();
  const remove = useMutation(
    useTRPC().library.remove.mutationOptions({ onSuccess: () => router.push(libraryPath(crewId)) }),
  );
  return (
    <ConfirmDialog
      title={TYPE_WORDS.removeTitle(name)}
      about={TYPE_WORDS.removeAbout}
      submit={TYPE_WORDS.removeSubmit}
      busy={remove.isPending || remove.isSuccess}
      refused={remove.error ? saidOf(remove.error) : undefined}
      onConfirm={() => remove.mutate({ crewId, typeId })}
      onClose={onClose}
    />
  );
}
