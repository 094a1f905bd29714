import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import type { CrewDetail } from '#wire/crews.ts';
import type { RigSummary } from '#wire/rigs.ts';
import { CREW_WORDS } from '#words/crew.ts';
import { RIG_KIND_WORDS } from '#words/screens.ts';
import { useTRPC } from '../../kit/data/trpc.tsx';
import { saidOf } from '../../kit/data/unreachable.ts';
import { useRigs } from '../../kit/data/use-rigs.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import { TextLink } from '../../kit/text-link.tsx';
import { AskNameDialog } from '../ask-name-dialog.tsx';
import { Part } from '../part.tsx';
import { TypedConfirmDialog } from '../typed-confirm-dialog.tsx';

interface Asking {
  readonly what: 'rename' | 'remove';
  readonly rig: RigSummary;
}

/** The crew's rigs; leads and editors rename them, leads remove them. */
export function CrewRigs({ crew }: { readonly crew: CrewDetail }) {
  const rigs = useRigs().value?.filter((rig) => rig.crewId === crew.id) ?? [];
  const [asking, setAsking] = useState<Asking>();
  const close = () => setAsking(undefined);
  return (
    <Part title={CREW_WORDS.rigs}>
      {rigs.length === 0 ? <p className="py-2 text-soft">{CREW_WORDS.noRigs}</p> : null}
      <ul>
        {rigs.map((rig) => (
          <li key={rig.id} className="flex min-h-row flex-wrap items-center gap-x-4 border-b border-rule px-2">
            <TextLink href={`/rigs/${rig.id}`} className="font-serif text-large">
              {rig.name}
            </TextLink>
            <span className="mr-auto text-soft">{RIG_KIND_WORDS[rig.kind]}</span>
            <span className="flex gap-4">
              {crew.role === 'reader' ? null : (
                <LinkButton
                  aria-label={`${CREW_WORDS.rename} ${rig.name}`}
                  onClick={() => setAsking({ what: 'rename', rig })}
                >
                  {CREW_WORDS.rename}
                </LinkButton>
              )}
              {crew.role === 'lead' ? (
                <LinkButton
                  aria-label={`${CREW_WORDS.remove} ${rig.name}`}
                  onClick={() => setAsking({ what: 'remove', rig })}
                >
                  {CREW_WORDS.removeAsk}
                </LinkButton>
              ) : null}
            </span>
          </li>
        ))}
      </ul>
      {asking?.what === 'rename' ? <RenameRigDialog rig={asking.rig} onClose={close} /> : null}
      {asking?.what === 'remove' ? <RemoveRigDialog rig={asking.rig} onClose={close} /> : null}
    </Part>
  );
}

interface RigDialogProps {
  readonly rig: RigSummary;
  readonly onClose: () => void;
}

function RenameRigDialog({ rig, onClose }: RigDialogProps) {
  const trpc = useTRPC();
  const rename = useMutation(trpc.rigs.rename.mutationOptions({ onSuccess: onClose }));
  return (
    <AskNameDialog
      title={CREW_WORDS.renameRigTitle}
      label={CREW_WORDS.rigName}
      submit={CREW_WORDS.renameSubmit}
      initial={rig.name}
      busy={rename.isPending}
      refused={rename.error ? saidOf(rename.error) : undefined}
      onName={(name) => rename.mutate({ rigId: rig.id, name })}
      onClose={onClose}
    />
  );
}

function RemoveRigDialog({ rig, onClose }: RigDialogProps) {
  const trpc = useTRPC();
  const remove = useMutation(trpc.rigs.remove.mutationOptions({ onSuccess: onClose }));
  return (
    <TypedConfirmDialog
      name={rig.name}
      title={CREW_WORDS.removeTitle(rig.name)}
      about={CREW_WORDS.removeRigAbout}
      submit={CREW_WORDS.remove}
      busy={remove.isPending}
      refused={remove.error ? saidOf(remove.error) : undefined}
      onConfirm={() => remove.mutate({ rigId: rig.id })}
      onClose={onClose}
    />
  );
}
