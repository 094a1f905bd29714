import { useMutation } from '@tanstack/react-query';
import { useId, useMemo, useState, useSyncExternalStore } from 'react';
import { blockerKey } from '#wire/blocker-key.ts';
import { CAPS } from '#wire/caps.ts';
import { FREEZE_WORDS as words } from '#words/revisions.ts';
import { KIT_WORDS } from '#words/screens.ts';
import { Button } from '../../kit/button.tsx';
import { useTRPC } from '../../kit/data/trpc.tsx';
import { saidOf } from '../../kit/data/unreachable.ts';
import { Dialog } from '../../kit/dialog.tsx';
import { Message } from '../../kit/message.tsx';
import { TextField } from '../../kit/text-field.tsx';
import { useSaveStatus } from '../../live/open-rig.tsx';
import type { RigStore } from '../../live/rig-store.ts';
import { BlockerList } from './blocker-list.tsx';
import { missingFor } from './missing-for.ts';

export interface FreezeDialogProps {
  readonly store: RigStore;
  readonly rigId: string;
  readonly onFrozen: (number: number) => void;
  readonly onClose: () => void;
}

/** Asks for a note, and for the name of who accepts each blocker that stands; freezes once what was edited here is saved. */
export function FreezeDialog({ store, rigId, onFrozen, onClose }: FreezeDialogProps) {
  const form = useId();
  const findings = useSyncExternalStore(store.subscribe, store.findings);
  const blockers = useMemo(() => findings.filter(({ severity }) => severity === 'blocker'), [findings]);
  const [note, setNote] = useState('');
  const [by, setBy] = useState('');
  const [ticked, setTicked] = useState<ReadonlySet<string>>(new Set());
  const status = useSaveStatus();
  const missing = missingFor({ status: status?.state, blockers, ticked, by });
  const freeze = useMutation(
    useTRPC().revisions.freeze.mutationOptions({
      onSuccess: ({ number }) => {
        onFrozen(number);
        onClose();
      },
    }),
  );
  const send = () => {
    const keys = blockers.filter(({ key }) => ticked.has(key)).map(({ key }) => blockerKey(key));
    freeze.mutate({ rigId, note, accepted: keys.length === 0 ? { by: '', keys } : { by, keys } });
  };
  const tick = (key: string) => {
    const next = new Set(ticked);
    if (!next.delete(key)) next.add(key);
    setTicked(next);
  };
  return (
    <Dialog
      title={words.title}
      onClose={onClose}
      answers={
        <>
          <p id={`${form}-missing`} role="status" className="mr-auto self-center">
            {missing}
          </p>
          <Button onClick={onClose}>{KIT_WORDS.cancel}</Button>
          <Button
            type="submit"
            form={form}
            look="main"
            aria-describedby={`${form}-missing`}
            disabled={missing !== undefined || freeze.isPending}
          >
            {words.submit}
          </Button>
        </>
      }
    >
      <form
        id={form}
        className="flex flex-col gap-4"
        onSubmit={(event) => {
          event.preventDefault();
          if (missing === undefined) send();
        }}
      >
        <p className="text-soft">{words.about}</p>
        <TextField label={words.note} hint={words.noteHint} maxLength={2000} value={note} onText={setNote} />
        {blockers.length === 0 ? null : (
          <>
            <BlockerList store={store} blockers={blockers} ticked={ticked} onTick={tick} />
            <TextField label={words.by} hint={words.byHint} maxLength={CAPS.nameLength} value={by} onText={setBy} />
          </>
        )}
      </form>
      {freeze.error === null ? null : <Message severity="blocker" said={saidOf(freeze.error)} />}
    </Dialog>
  );
}
