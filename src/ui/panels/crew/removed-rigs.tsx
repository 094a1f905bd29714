import { useMutation, useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import type { CrewDetail } from '#wire/crews.ts';
import type { RemovedRig } from '#wire/rigs.ts';
import { REMOVED_WORDS } from '#words/crew.ts';
import { sayDay } from '#words/screens.ts';
import { useTRPC } from '../../kit/data/trpc.tsx';
import { saidOf } from '../../kit/data/unreachable.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import { Message } from '../../kit/message.tsx';
import { Part } from '../part.tsx';
import { TypedConfirmDialog } from '../typed-confirm-dialog.tsx';

/** The rigs that were removed, by whom, and until when each can be brought back, which leads can. Nothing where there are none. */
export function RemovedRigs({ crew }: { readonly crew: CrewDetail }) {
  const trpc = useTRPC();
  const rigs = useQuery(trpc.rigs.removed.queryOptions({ crewId: crew.id })).data ?? [];
  const bringBack = useMutation(trpc.rigs.bringBack.mutationOptions());
  const [destroying, setDestroying] = useState<RemovedRig>();
  if (rigs.length === 0) return null;
  return (
    <Part title={REMOVED_WORDS.title} about={REMOVED_WORDS.about}>
      <ul>
        {rigs.map((rig) => (
          <li key={rig.id} className="flex min-h-row flex-wrap items-center gap-x-4 border-b border-rule px-2 py-1">
            <span className="font-serif text-large">{rig.name}</span>
            <span className="mr-auto text-soft">{REMOVED_WORDS.line(rig.by, sayDay(rig.at), sayDay(rig.until))}</span>
            {crew.role === 'lead' ? (
              <span className="flex flex-wrap gap-x-4">
                <LinkButton
                  aria-label={`${REMOVED_WORDS.bringBack} ${rig.name}`}
                  disabled={bringBack.isPending}
                  onClick={() => bringBack.mutate({ rigId: rig.id })}
                >
                  {REMOVED_WORDS.bringBack}
                </LinkButton>
                <LinkButton aria-label={`${REMOVED_WORDS.destroy} ${rig.name}`} onClick={() => setDestroying(rig)}>
                  {REMOVED_WORDS.destroy}
                </LinkButton>
              </span>
            ) : null}
          </li>
        ))}
      </ul>
      {bringBack.error ? <Message severity="blocker" said={saidOf(bringBack.error)} /> : null}
      {destroying ? <DestroyDialog rig={destroying} onClose={() => setDestroying(undefined)} /> : null}
    </Part>
  );
}

function DestroyDialog({ rig, onClose }: { readonly rig: RemovedRig; readonly onClose: () => void }) {
  const trpc = useTRPC();
  const destroy = useMutation(trpc.rigs.destroy.mutationOptions({ onSuccess: onClose }));
  return (
    <TypedConfirmDialog
      name={rig.name}
      title={REMOVED_WORDS.destroyTitle(rig.name)}
      about={REMOVED_WORDS.destroyAbout}
      submit={REMOVED_WORDS.destroySubmit}
      busy={destroy.isPending}
      refused={destroy.error ? saidOf(destroy.error) : undefined}
      onConfirm={(name) => destroy.mutate({ rigId: rig.id, name })}
      onClose={onClose}
    />
  );
}
