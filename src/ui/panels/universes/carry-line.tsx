import { useSyncExternalStore } from 'react';
import { getRow } from '#base/table.ts';
import { unreachable } from '#base/unreachable.ts';
import { formatAddress } from '#engine/address/notation.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';
import type { Landing } from '#engine/patch/landing.ts';
import { unitName } from '#words/findings.ts';
import { planRefusalSentence } from '#words/plans.ts';
import { landingSentence, RIBBONS_WORDS as words } from '#words/ribbons.ts';
import { Button } from '../../kit/button.tsx';
import { LinkButton } from '../../kit/link-button.tsx';
import type { RigStore } from '../../live/rig-store.ts';
import { type Carriage, type Carry, type CarryState, stepAlong } from '../../universes/carry.ts';
import { refusalSentence } from '../../workspace/notice-line.tsx';

export interface CarryLineProps {
  readonly store: RigStore;
  readonly carry: Carry;
  /** Where the carried block would sit, if it is still there. */
  readonly landing: Landing | undefined;
  /** Called after a step was taken back: what was pressed is gone then. */
  readonly onTakenBack: () => void;
}

/** Under the ribbons: what the carried block would get and meet, or what came of the last one. */
export function CarryLine({ store, carry, landing, onTakenBack }: CarryLineProps) {
  const state = useSyncExternalStore(carry.subscribe, carry.state);
  const mine = useSyncExternalStore(store.subscribeHistory, store.nextUndo);
  const writable = useSyncExternalStore(store.subscribeLink, store.canEdit);
  const takeBack = () => {
    carry.takeBack();
    onTakenBack();
  };
  return (
    <div className="flex min-h-8 shrink-0 flex-wrap items-baseline gap-x-4 border-t border-ink px-4 py-1 sm:px-5">
      <p role="status">{sentenceOf(store.rig(), state, landing)}</p>
      {state.carried?.by === 'finger' ? <FingerButtons carry={carry} onPut={onTakenBack} /> : null}
      {state.last?.kind === 'moved' && mine === 'move' ? (
        <LinkButton onClick={takeBack}>{words.takeBack}</LinkButton>
      ) : null}
      <p className="hidden text-small text-soft touch:block">{words.fingerHint}</p>
      <p className="text-small text-soft touch:hidden">{hintOf(state, writable ? 'editor' : 'reader')}</p>
    </div>
  );
}

/** Slots are narrow and fingers are not: the last step is taken with these. */
function FingerButtons({ carry, onPut }: { readonly carry: Carry; readonly onPut: () => void }) {
  const step = (by: -1 | 1) => {
    const { carried } = carry.state();
    if (carried !== undefined) carry.aim(stepAlong(carried.at, by));
  };
  const end = (how: 'put' | 'leave') => {
    carry[how]();
    onPut();
  };
  return (
    <span className="flex flex-wrap gap-2">
      <Button aria-label={words.lower} onClick={() => step(-1)}>
        −1
      </Button>
      <Button aria-label={words.higher} onClick={() => step(1)}>
        +1
      </Button>
      <Button look="main" onClick={() => end('put')}>
        {words.putHere}
      </Button>
      <Button onClick={() => end('leave')}>{words.leave}</Button>
    </span>
  );
}

function hintOf({ carried }: CarryState, who: 'editor' | 'reader'): string {
  if (who === 'reader') return words.readerHint;
  return carried === undefined ? words.hint : words.howToEnd[carried.by];
}

function sentenceOf(rig: Rig, { carried, last }: CarryState, landing: Landing | undefined): string {
  if (carried === undefined) return last === undefined ? '' : endSentence(rig, last);
  if (landing === undefined) return words.gone;
  const [first] = landing.meets;
  return landingSentence(named(rig, carried.block.fixture), landing, first === undefined ? '' : named(rig, first));
}

function endSentence(rig: Rig, last: Carriage): string {
  switch (last.kind) {
    case 'moved':
      return words.moved(named(rig, last.fixture), formatAddress(last.from), formatAddress(last.to));
    case 'left':
      return words.left(named(rig, last.fixture), formatAddress(last.from));
    case 'refused':
      return refusalSentence(last.refusal, rig);
    case 'no-plan':
      return planRefusalSentence(last.refusal, rig);
    case 'taken-back':
      return words.takenBack;
    default:
      return unreachable(last);
  }
}

const named = (rig: Rig, id: FixtureId) => unitName(getRow(rig.fixtures, id));
