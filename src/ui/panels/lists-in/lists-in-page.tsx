import { useState } from 'react';
import type { RigSummary } from '#wire/rigs.ts';
import { LISTS_IN_WORDS } from '#words/lists-in.ts';
import { Message } from '../../kit/message.tsx';
import { PageFrame } from '../../kit/page-frame.tsx';
import { RigBanner } from '../rig/rig-banner.tsx';
import { SavedHere } from '../rig/saved-here.tsx';
import { ListPreview } from './list-preview.tsx';
import type { OpenedList } from './opened-list.ts';
import { TakeList } from './take-list.tsx';

/** Brings a fixture list into the rig: take it, look at what it becomes, bring it in. */
export function ListsInPage({ rig }: { readonly rig: RigSummary }) {
  return (
    <PageFrame
      title={`${LISTS_IN_WORDS.title} · ${rig.name}`}
      banner={<RigBanner rig={rig} rigId={rig.id} page="lists-in" aside={<SavedHere />} />}
      width="wide"
    >
      {rig.role === 'reader' ? <Message severity="caution" said={LISTS_IN_WORDS.readOnly} /> : <Steps rig={rig} />}
    </PageFrame>
  );
}

function Steps({ rig }: { readonly rig: RigSummary }) {
  const [opened, setOpened] = useState<OpenedList>();
  if (opened === undefined) return <TakeList onOpened={setOpened} />;
  return <ListPreview opened={opened} rigId={rig.id} crewId={rig.crewId} onAnother={() => setOpened(undefined)} />;
}
