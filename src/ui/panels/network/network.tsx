import { useEffect, useState, useSyncExternalStore } from 'react';
import { NETWORK_WORDS as words } from '#words/network.ts';
import { EMPTY_WORDS } from '#words/sheet.ts';
import type { RigStore } from '../../live/rig-store.ts';
import { ConventionPart } from './convention-part.tsx';
import { DevicesPart } from './devices-part.tsx';
import { type StepBack, Steps, stepBack } from './steps.tsx';
import { UniversesPart } from './universes-part.tsx';
import { useNetwork } from './use-network.ts';

export interface NetworkProps {
  readonly store: RigStore;
  readonly rigId: string;
}

/** The network of an open rig: the convention of numbers, how universes travel, and the devices. */
export function Network({ store, rigId }: NetworkProps) {
  const view = useNetwork(store, rigId);
  const arrived = useSyncExternalStore(store.subscribeLink, store.hasArrived);
  const [last, setLast] = useState<StepBack>();
  const step = (way: StepBack['way']) => setLast(stepBack(store, way));
  useStepKeys(store, setLast);
  useEffect(() => {
    if (arrived) document.getElementById(window.location.hash.slice(1))?.focus();
  }, [arrived]);
  if (!arrived) return <p className="text-soft">{EMPTY_WORDS.arriving}</p>;
  return (
    <div className="flex flex-col gap-6">
      <div className="flex flex-col gap-2">
        <div className="flex flex-wrap items-baseline gap-x-5">
          <p className="text-soft">{words.summary(view.routes.length, view.network.plant.nodes.length)}</p>
          {view.frozen ? <p>{words.reader}</p> : <Steps store={store} last={last} onStep={step} />}
        </div>
        <ConventionPart view={view} />
      </div>
      <UniversesPart view={view} />
      <DevicesPart view={view} />
    </div>
  );
}

/** The keys that take a step back or do it again, wherever one is on the page. */
function useStepKeys(store: RigStore, onStep: (last: StepBack) => void): void {
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      const way = wayOf(event);
      if (way === undefined || isTyping(event.target)) return;
      event.preventDefault();
      onStep(stepBack(store, way));
    };
    window.addEventListener('keydown', press);
    return () => window.removeEventListener('keydown', press);
  }, [store, onStep]);
}

function wayOf({ key, ctrlKey, metaKey, shiftKey, altKey }: KeyboardEvent): StepBack['way'] | undefined {
  if (!(ctrlKey || metaKey) || altKey) return undefined;
  if (key.toLowerCase() === 'z') return shiftKey ? 'redo' : 'undo';
  return key.toLowerCase() === 'y' ? 'redo' : undefined;
}

/** Whether a field holds text that is not written yet: its own keys take that back. */
const isTyping = (target: EventTarget | null) =>
  target instanceof HTMLInputElement && (target.dataset.typed !== undefined || target.closest('dialog') !== null);
