'use client';

import { useEffect, useState } from 'react';
import type { Me } from '#wire/me.ts';
import { ACCOUNT_WORDS, SIGN_IN_WORDS } from '#words/account.ts';
import { KIT_WORDS } from '#words/screens.ts';
import { Button } from '../../kit/button.tsx';
import { forgetKept } from '../../kit/data/kept.ts';
import { useMe } from '../../kit/data/use-me.ts';
import { Dialog } from '../../kit/dialog.tsx';
import { LinkButton } from '../../kit/link-button.tsx';
import { Message } from '../../kit/message.tsx';
import { TextLink } from '../../kit/text-link.tsx';
import { ThemeSelect } from '../../kit/theme/theme-select.tsx';
import { PlainHttpNotice } from '../plain-http-notice.tsx';
import { askAccounts } from './account-requests.ts';

/** Who is signed in, as a word that opens the account: theme and the way out. */
export function AccountButton() {
  const [open, setOpen] = useState(false);
  const me = useMe();
  if (me.value === undefined) return null;
  return (
    <div className="flex flex-wrap items-center gap-x-4 gap-y-1">
      {me.value.user === null ? <TextLink href="/sign-in">{SIGN_IN_WORDS.title}</TextLink> : null}
      <LinkButton onClick={() => setOpen(true)} aria-haspopup="dialog">
        {me.value.user?.name ?? ACCOUNT_WORDS.light}
      </LinkButton>
      {open ? <AccountDialog user={me.value.user} onClose={() => setOpen(false)} /> : null}
    </div>
  );
}

interface AccountDialogProps {
  readonly user: Me['user'];
  readonly onClose: () => void;
}

function AccountDialog({ user, onClose }: AccountDialogProps) {
  const [state, setState] = useState<'idle' | 'leaving' | 'failed'>('idle');
  const signOut = async () => {
    setState('leaving');
    if ((await askAccounts('sign-out', {})) !== undefined) return setState('failed');
    forgetKept();
    window.location.assign('/');
  };
  const answers = (
    <>
      {user === null ? null : (
        <Button onClick={signOut} disabled={state === 'leaving'}>
          {state === 'leaving' ? ACCOUNT_WORDS.signingOut : ACCOUNT_WORDS.signOut}
        </Button>
      )}
      <Button look="main" onClick={onClose}>
        {KIT_WORDS.close}
      </Button>
    </>
  );
  return (
    <Dialog title={user === null ? ACCOUNT_WORDS.light : ACCOUNT_WORDS.title} onClose={onClose} answers={answers}>
      {user === null ? null : <p>{ACCOUNT_WORDS.signedInAs(user.name, user.email)}</p>}
      {user === null ? null : <UnsavedHere user={user.id} />}
      <ThemeSelect />
      <PlainHttpNotice />
      {state === 'failed' ? <Message severity="blocker" said={ACCOUNT_WORDS.signOutFailed} /> : null}
    </Dialog>
  );
}

/** Tells of edits that would be left waiting on this device when one signs out. */
function UnsavedHere({ user }: { readonly user: string }) {
  const [unsaved, setUnsaved] = useState(0);
  useEffect(() => {
    let gone = false;
    const count = async () => {
      // Loaded only now: it brings the whole document library along, which no other page needs.
      const { unsavedOnDevice } = await import('../../live/sync/indexed-db-copy.ts');
      const found = await unsavedOnDevice(user);
      if (gone || !found.ok) return; // Without storage nothing waits on this device.
      setUnsaved([...found.value.values()].reduce((sum, edits) => sum + edits, 0));
    };
    void count();
    return () => {
      gone = true;
    };
  }, [user]);
  return unsaved === 0 ? null : <Message severity="caution" said={ACCOUNT_WORDS.unsaved(unsaved)} />;
}
