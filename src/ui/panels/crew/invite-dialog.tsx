import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import type { Role } from '#wire/role.ts';
import { INVITE_WORDS } from '#words/crew.ts';
import { KIT_WORDS, sayDay } from '#words/screens.ts';
import { Button } from '../../kit/button.tsx';
import { useTRPC } from '../../kit/data/trpc.tsx';
import { saidOf } from '../../kit/data/unreachable.ts';
import { Dialog } from '../../kit/dialog.tsx';
import { Message } from '../../kit/message.tsx';
import { Select } from '../../kit/select.tsx';
import { CopyLine } from './copy-line.tsx';
import { ROLE_CHOICES } from './role-choices.ts';

export interface InviteDialogProps {
  readonly crewId: string;
  readonly onClose: () => void;
}

/** Asks for a role, makes a link, and shows it this once. */
export function InviteDialog({ crewId, onClose }: InviteDialogProps) {
  const trpc = useTRPC();
  const [role, setRole] = useState<Role>('editor');
  const create = useMutation(trpc.invitations.create.mutationOptions());
  if (create.data) {
    return (
      <Dialog
        title={INVITE_WORDS.ready}
        onClose={onClose}
        answers={<Button onClick={onClose}>{KIT_WORDS.close}</Button>}
      >
        <CopyLine
          label={INVITE_WORDS.link}
          hint={INVITE_WORDS.linkHint(sayDay(create.data.expiresAt))}
          text={window.location.origin + create.data.path}
        />
      </Dialog>
    );
  }
  const answers = (
    <>
      <Button onClick={onClose}>{KIT_WORDS.cancel}</Button>
      <Button look="main" disabled={create.isPending} onClick={() => create.mutate({ crewId, role })}>
        {INVITE_WORDS.submit}
      </Button>
    </>
  );
  return (
    <Dialog title={INVITE_WORDS.make} onClose={onClose} answers={answers}>
      <Select label={INVITE_WORDS.role} choices={ROLE_CHOICES} value={role} onChoose={setRole} />
      {create.error ? <Message severity="blocker" said={saidOf(create.error)} /> : null}
    </Dialog>
  );
}
