import { type MouseEvent, useEffect, useMemo, useSyncExternalStore } from 'react';
import { type Universe, universeOf } from '#engine/model/address.ts';
import type { Rig } from '#engine/model/rig.ts';
import { type Landing, landingOf } from '#engine/patch/landing.ts';
import type { RigStore } from '../../live/rig-store.ts';
import { type Carry, type CarryState, createCarry } from '../../universes/carry.ts';
import { type OtherCarrying, othersCarrying } from '../../universes/others-carrying.ts';
import { aimOfTap } from './aim-of-tap.ts';

export interface Carrying {
  readonly carry: Carry;
  readonly carried: CarryState['carried'];
  /** Where the carried block would sit, if it is still there. */
  readonly landing: Landing | undefined;
  /** What others carry from a universe or over it. */
  readonly othersAt: (universe: Universe) => readonly OtherCarrying[];
  /** Carries the block in a finger’s hand to where the finger came down. */
  readonly tap: (event: MouseEvent) => void;
}

/** The blocks on their way in this moment: mine, and those of others. Leaving the page leaves mine where it was. */
export function useCarrying(store: RigStore, rig: Rig): Carrying {
  const carry = useMemo(() => createCarry(store), [store]);
  useEffect(() => carry.leave, [carry]);
  const { carried } = useSyncExternalStore(carry.subscribe, carry.state);
  const people = useSyncExternalStore(store.subscribeLink, store.people);
  const others = useMemo(() => othersCarrying(people, rig, store.occupancy()), [people, rig, store]);
  const tap = (event: MouseEvent) => {
    if (carried?.by !== 'finger' || !(event.target instanceof Element)) return;
    const at = aimOfTap(event.target, event.clientX);
    if (at === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    carry.aim(at);
  };
  return {
    carry,
    carried,
    landing: carried && landingOf(store.rig(), store.occupancy(), carried.block, carried.at),
    othersAt: (universe) => othersAt(others, universe),
    tap,
  };
}

const NO_OTHERS: readonly OtherCarrying[] = [];

function othersAt(others: readonly OtherCarrying[], universe: Universe): readonly OtherCarrying[] {
  const here = others.filter(({ from, landing }) => from === universe || universeOf(landing.at) === universe);
  return here.length === 0 ? NO_OTHERS : here;
}
