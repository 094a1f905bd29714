import { useState } from 'react';
import { LISTS_IN_WORDS } from '#words/lists-in.ts';
import { saidOf } from '../../kit/data/unreachable.ts';
import { useRig } from '../../kit/data/use-rigs.ts';
import { Message } from '../../kit/message.tsx';
import { PageFrame } from '../../kit/page-frame.tsx';
import { RigBanner } from '../rig/rig-banner.tsx';
import { SavedHere } from '../rig/saved-here.tsx';
import { SignedIn } from '../signed-in.tsx';
import { ListPreview } from './list-preview.tsx';
import type { OpenedList } from './opened-list.ts';
import { TakeList } from './take-list.tsx';

/** Brings a fixture list into the rig: take it, look at what it becomes, bring it in. */
export function ListsInPage({ rigId }: { readonly rigId: string }) {
  const rig = useRig(rigId);
  const [opened, setOpened] = useState<OpenedList>();
  return (
    <PageFrame
      title={`${LISTS_IN_WORDS.title} · ${rig.value?.name ?? ''}`}
      banner={<RigBanner rig={rig.value} rigId={rigId} page="lists-in" aside={<SavedHere />} />}
      width="wide"
    >
      <SignedIn>
        {() => {
          if (rig.error !== null) return <Message severity="blocker" said={saidOf(rig.error)} />;
          if (rig.value?.role === 'reader') return <Message severity="caution" said={LISTS_IN_WORDS.readOnly} />;
          if (opened === undefined) return <TakeList onOpened={setOpened} />;
          return (
            <ListPreview
              opened={opened}
              rigId={rigId}
              crewId={rig.value?.crewId}
              onAnother={() => setOpened(undefined)}
            />
          );
        }}
      </SignedIn>
    </PageFrame>
  );
}
