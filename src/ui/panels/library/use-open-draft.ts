import { useMutation } from '@tanstack/react-query';
import { useRouter } from 'next/navigation';
import { useTRPC } from '../../kit/data/trpc.tsx';
import { saidOf } from '../../kit/data/unreachable.ts';
import type { Said } from '../../kit/message.tsx';
import { draftPath } from './library-address.ts';

export interface OpeningDraft {
  /** Opens a draft of a type, or of a new one (null), and goes to it. */
  readonly open: (typeId: string | null) => void;
  readonly busy: boolean;
  readonly refused: Said | undefined;
}

export function useOpenDraft(crewId: string): OpeningDraft {
  const router = useRouter();
  const openDraft = useMutation(
    useTRPC().library.openDraft.mutationOptions({
      onSuccess: (draft) => router.push(draftPath(crewId, draft.draftId)),
    }),
  );
  return {
    open: (typeId) => openDraft.mutate({ crewId, typeId }),
    // It stays so until the page of the draft is there.
    busy: openDraft.isPending || openDraft.isSuccess,
    refused: openDraft.error ? saidOf(openDraft.error) : undefined,
  };
}
