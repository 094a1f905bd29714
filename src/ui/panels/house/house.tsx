import { useSyncExternalStore } from 'react';
import { randomId } from '#base/random-id.ts';
import { ok, refuse } from '#base/result.ts';
import { noteId } from '#engine/model/ids.ts';
import { HOUSE_WORDS as words } from '#words/house.ts';
import { EMPTY_WORDS } from '#words/sheet.ts';
import type { RigStore } from '../../live/rig-store.ts';
import { useCalmRig } from '../../live/use-calm-rig.ts';
import { AddLine } from '../../plant/add-line.tsx';
import type { CardScene } from '../../plant/card-list.tsx';
import { addNote, NotesList } from '../../plant/notes-list.tsx';
import { JumpLine } from '../jump-line.tsx';
import { Part } from '../part.tsx';
import { SheetLinks } from '../sheets-out/sheet-links.tsx';
import { Steps } from '../steps.tsx';
import { CircuitsPart } from './circuits-part.tsx';
import { ContactsPart, OutletsPart, SparesPart } from './line-parts.tsx';
import { NetworkPart } from './network-part.tsx';
import { PositionsPart } from './positions-part.tsx';
import { VenuePart } from './venue-part.tsx';

export interface HouseProps {
  readonly store: RigStore;
  readonly rigId: string;
  readonly rigName: string;
}

/** The record of a house, part by part, each written in place. */
export function House({ store, rigId, rigName }: HouseProps) {
  const rig = useCalmRig(store);
  const arrived = useSyncExternalStore(store.subscribeLink, store.hasArrived);
  const canEdit = useSyncExternalStore(store.subscribeLink, store.canEdit);
  if (!arrived) return <p className="text-soft">{EMPTY_WORDS.arriving}</p>;
  const scene: CardScene = { store, rig, writable: canEdit ? 'yes' : 'no' };
  return (
    <div className="flex flex-col gap-7">
      <div className="flex flex-col gap-1">
        <JumpLine name={words.jump} parts={words.parts} />
        <div className="flex flex-wrap gap-x-8">
          <SheetLinks kind="tech-pack" rigId={rigId} rigName={rigName} />
          {canEdit ? <Steps store={store} /> : <p>{words.reader}</p>}
        </div>
      </div>
      <VenuePart scene={scene} />
      <PositionsPart scene={scene} />
      <CircuitsPart scene={scene} rigId={rigId} />
      <OutletsPart scene={scene} />
      <NetworkPart scene={scene} rigId={rigId} />
      <SparesPart scene={scene} />
      <ContactsPart scene={scene} />
      <NotesPart scene={scene} />
    </div>
  );
}

function NotesPart({ scene }: { readonly scene: CardScene }) {
  const { store } = scene;
  const plan = (text: string) =>
    text.trim() === ''
      ? refuse({ code: 'nothing-said', of: 'line' } as const)
      : ok(addNote(store, noteId(randomId()), text.trim()));
  return (
    <Part anchor="notes" title={words.parts.notes}>
      <div className="max-w-4xl pt-2">
        <NotesList store={store} onPlan={store.apply} />
      </div>
      <AddLine scene={scene} what="note" planOf={plan} />
    </Part>
  );
}
