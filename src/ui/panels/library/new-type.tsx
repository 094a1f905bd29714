import { LIBRARY_WORDS } from '#words/library.ts';
import { Button } from '../../kit/button.tsx';
import { Message } from '../../kit/message.tsx';
import { useOpenDraft } from './use-open-draft.ts';

/** Begins a type that is written from its manual. */
export function NewType({ crewId }: { readonly crewId: string }) {
  const { open, busy, refused } = useOpenDraft(crewId);
  return (
    <>
      <Button onClick={() => open(null)} disabled={busy}>
        {LIBRARY_WORDS.newType}
      </Button>
      {refused === undefined ? null : <Message severity="blocker" said={refused} />}
    </>
  );
}
