import { useState, useSyncExternalStore } from 'react';
import type { Plan } from '#engine/model/edit.ts';
import type { RigSummary } from '#wire/rigs.ts';
import { HISTORY_WORDS as words } from '#words/history.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import type { RigStore } from '../../live/rig-store.ts';
import { useHistoryPlace } from './history-place.ts';
import { Moment } from './moment.tsx';
import { Timeline } from './timeline.tsx';

export interface HistoryProps {
  readonly store: RigStore;
  readonly rig: RigSummary;
}

/** The timeline of an open rig, or the rig as it was at one moment of it; above both what came of the last step taken here. */
export function History({ store, rig }: HistoryProps) {
  const [place, go] = useHistoryPlace();
  const [said, setSaid] = useState('');
  return (
    <>
      <SaidLine store={store} said={said} onUndo={() => setSaid(store.undo() === undefined ? '' : words.undone)} />
      <div className="flex flex-col gap-4">
        {place.moment === null ? (
          <Timeline store={store} rig={rig} place={place} onGo={go} onSaid={setSaid} />
        ) : (
          <Moment
            key={place.moment}
            store={store}
            rigId={rig.id}
            seq={place.moment}
            onBack={(text) => {
              go({ ...place, moment: null });
              setSaid(text);
            }}
          />
        )}
      </div>
    </>
  );
}

interface SaidLineProps {
  readonly store: RigStore;
  readonly said: string;
  readonly onUndo: () => void;
}

const OURS: readonly (Plan['name'] | undefined)[] = ['go-back', 'put-back'];

function SaidLine({ store, said, onUndo }: SaidLineProps) {
  const mine = useSyncExternalStore(store.subscribeHistory, store.nextUndo);
  const undoes = said !== '' && said !== words.undone && OURS.includes(mine);
  return (
    <div
      className={`flex flex-wrap items-baseline gap-x-4 ${said === '' ? '' : 'mb-4 border-b border-rule-strong bg-selected px-3 py-1'}`}
    >
      <p role="status">{said}</p>
      {undoes ? <LinkButton onClick={onUndo}>{words.undo}</LinkButton> : null}
    </div>
  );
}
