import { type FormEvent, type ReactNode, useState, useSyncExternalStore } from 'react';
import { Button } from '../../kit/button.tsx';
import { Message, type Said } from '../../kit/message.tsx';
import { TextLink } from '../../kit/text-link.tsx';
import { askAccounts } from './account-requests.ts';
import { pathAfter, withReturn } from './path-after.ts';

export interface AccountFormProps {
  readonly words: {
    readonly submit: string;
    readonly busy: string;
    readonly other: string;
    readonly otherLink: string;
  };
  /** Path of the account service's procedure. */
  readonly procedure: string;
  readonly body: Readonly<Record<string, string>>;
  /** The page for those who are on the wrong one of the two. */
  readonly other: '/sign-in' | '/sign-up';
  readonly children: ReactNode;
}

/** Sends what its fields hold, says what was refused, and goes on to where the person was headed. */
export function AccountForm({ words, procedure, body, other, children }: AccountFormProps) {
  const [busy, setBusy] = useState(false);
  const [said, setSaid] = useState<Said>();
  const then = useSyncExternalStore(
    () => () => undefined,
    () => pathAfter(window.location.search),
    () => '/',
  );
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    setBusy(true);
    setSaid(undefined);
    const refused = await askAccounts(procedure, body);
    // A whole page load: nothing of another person's answers stays in memory.
    if (refused === undefined) return window.location.assign(then);
    setBusy(false);
    setSaid(refused);
  };
  return (
    <>
      <form onSubmit={submit} className="flex flex-col gap-4">
        {children}
        {said === undefined ? null : <Message severity="blocker" said={said} />}
        <div>
          <Button type="submit" look="main" disabled={busy}>
            {busy ? words.busy : words.submit}
          </Button>
        </div>
      </form>
      <p>
        {words.other} <TextLink href={withReturn(other, then)}>{words.otherLink}</TextLink>
      </p>
    </>
  );
}
