import { useState } from 'react';
import { systemClock } from '#base/clock.ts';
import { ok } from '#base/result.ts';
import type { LineState, RestoreLine } from '#engine/diff/restore.ts';
import { removeCard, setCard } from '#engine/model/card-edits.ts';
import { useMyName } from '../../live/my-name.ts';
import type { RigStore } from '../../live/rig-store.ts';
import { carryOutPlan } from '../../workspace/carry-out-plan.ts';

export type Tick = (line: RestoreLine, state: Exclude<LineState, 'open'>) => void;

/** Ticks a line in my name, or takes its tick away when it says so already; and why not, when it was refused. */
export function useTicking(store: RigStore): { readonly tick: Tick; readonly refused: string | undefined } {
  const by = useMyName();
  const [refused, setRefused] = useState<string>();
  const tick: Tick = ({ key, state: was }, state) => {
    const at = new Date(systemClock.now()).toISOString();
    const edits = was === state ? removeCard(store.rig(), 'tick', key) : setCard('tick', key, { state, by, at });
    setRefused(carryOutPlan(store, ok({ name: 'tick', edits })));
  };
  return { tick, refused };
}
