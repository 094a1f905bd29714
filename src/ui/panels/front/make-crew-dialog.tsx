import { useMutation } from '@tanstack/react-query';
import { MAKE_CREW_WORDS } from '#words/front.ts';
import { useTRPC } from '../../kit/data/trpc.tsx';
import { saidOf } from '../../kit/data/unreachable.ts';
import { AskNameDialog } from '../ask-name-dialog.tsx';

export function MakeCrewDialog({ onClose }: { readonly onClose: () => void }) {
  const trpc = useTRPC();
  const create = useMutation(trpc.crews.create.mutationOptions({ onSuccess: onClose }));
  return (
    <AskNameDialog
      title={MAKE_CREW_WORDS.title}
      label={MAKE_CREW_WORDS.name}
      hint={MAKE_CREW_WORDS.about}
      submit={MAKE_CREW_WORDS.submit}
      busy={create.isPending}
      refused={create.error ? saidOf(create.error) : undefined}
      onName={(name) => create.mutate({ name })}
      onClose={onClose}
    />
  );
}
