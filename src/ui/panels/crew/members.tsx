import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import type { CrewDetail, CrewMember } from '#wire/crews.ts';
import type { Role } from '#wire/role.ts';
import { CREW_WORDS } from '#words/crew.ts';
import { ROLE_WORDS, sayDay } from '#words/screens.ts';
import { useTRPC } from '../../kit/data/trpc.tsx';
import { saidOf } from '../../kit/data/unreachable.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import { Message } from '../../kit/message.tsx';
import { BareSelect } from '../../kit/select.tsx';
import { type Column, Table } from '../../kit/table.tsx';
import { ConfirmDialog } from '../confirm-dialog.tsx';
import { Part } from '../part.tsx';
import { ROLE_NAMES } from './role-choices.ts';

export interface MembersProps {
  readonly crew: CrewDetail;
  /** My own id. */
  readonly me: string;
}

/** Who is in the crew as what; a lead changes roles and removes people here. */
export function Members({ crew, me }: MembersProps) {
  const trpc = useTRPC();
  const setRole = useMutation(trpc.crews.setRole.mutationOptions());
  const [removing, setRemoving] = useState<CrewMember>();
  const lead = crew.role === 'lead';
  const columns: Column<CrewMember>[] = [
    {
      key: 'name',
      heading: CREW_WORDS.name,
      cell: (member) => (
        <>
          {member.userId === me ? `${member.name} (${CREW_WORDS.you})` : member.name}
          <span className="block text-small text-soft [overflow-wrap:anywhere] sm:hidden">{member.email}</span>
        </>
      ),
    },
    { key: 'email', heading: CREW_WORDS.email, wideOnly: true, cell: (member) => member.email },
    {
      key: 'role',
      heading: CREW_WORDS.role,
      cell: (member) =>
        lead ? (
          <div className="min-w-24">
            <BareSelect<Role>
              name={CREW_WORDS.roleOf(member.name)}
              choices={ROLE_NAMES}
              value={member.role}
              disabled={setRole.isPending}
              onChoose={(role) => setRole.mutate({ crewId: crew.id, userId: member.userId, role })}
            />
          </div>
        ) : (
          ROLE_WORDS[member.role].name
        ),
    },
    { key: 'joined', heading: CREW_WORDS.joined, wideOnly: true, cell: (member) => sayDay(member.joinedAt) },
  ];
  const removal: Column<CrewMember> = {
    key: 'remove',
    heading: CREW_WORDS.remove,
    cell: (member) =>
      member.userId === me ? null : (
        <LinkButton aria-label={`${CREW_WORDS.remove} ${member.name}`} onClick={() => setRemoving(member)}>
          {CREW_WORDS.remove}
        </LinkButton>
      ),
  };
  return (
    <Part title={CREW_WORDS.members}>
      <Table
        caption={CREW_WORDS.members}
        columns={lead ? [...columns, removal] : columns}
        rows={crew.members}
        keyOf={(member) => member.userId}
        rowName="name"
      />
      <p className="py-2 text-soft">{CREW_WORDS.roles}</p>
      {setRole.error ? <Message severity="blocker" said={saidOf(setRole.error)} /> : null}
      {removing ? <RemoveDialog crewId={crew.id} member={removing} onClose={() => setRemoving(undefined)} /> : null}
    </Part>
  );
}

interface RemoveDialogProps {
  readonly crewId: string;
  readonly member: CrewMember;
  readonly onClose: () => void;
}

function RemoveDialog({ crewId, member, onClose }: RemoveDialogProps) {
  const trpc = useTRPC();
  const remove = useMutation(trpc.crews.removeMember.mutationOptions({ onSuccess: onClose }));
  return (
    <ConfirmDialog
      title={CREW_WORDS.removeTitle(member.name)}
      about={CREW_WORDS.removeAbout}
      submit={CREW_WORDS.remove}
      busy={remove.isPending}
      refused={remove.error ? saidOf(remove.error) : undefined}
      onConfirm={() => remove.mutate({ crewId, userId: member.userId })}
      onClose={onClose}
    />
  );
}
