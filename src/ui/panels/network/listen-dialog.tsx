import { useMemo, useState } from 'react';
import { LAST_UNIVERSE, type Universe } from '#engine/model/address.ts';
import type { NetworkNode } from '#engine/model/plant.ts';
import { listenPlan } from '#engine/network/network-plans.ts';
import { NETWORK_WORDS as words } from '#words/network.ts';
import { TextField } from '../../kit/text-field.tsx';
import { PlanDialog } from './plan-dialog.tsx';
import type { NetworkView } from './use-network.ts';

export interface ListenDialogProps {
  readonly view: NetworkView;
  readonly node: NetworkNode;
  readonly onClose: () => void;
}

/** Lets the free ports of a node listen to the next universes. */
export function ListenDialog({ view, node, onClose }: ListenDialogProps) {
  const [text, setText] = useState('');
  const rig = view.store.rig();
  const from = readUniverse(text);
  const plan = useMemo(() => listenPlan(rig, node.id, from ?? null), [rig, node, from]);
  return (
    <PlanDialog store={view.store} title={words.listenOf(node.name).replace('…', '')} plan={plan} onClose={onClose}>
      <TextField
        label={words.from}
        hint={words.fromHint}
        error={from === undefined ? words.notUniverses : undefined}
        inputMode="numeric"
        value={text}
        onText={setText}
      />
    </PlanDialog>
  );
}

/** Null for none, undefined for what is no universe. */
function readUniverse(text: string): Universe | null | undefined {
  const trimmed = text.trim();
  if (trimmed === '') return null;
  const value = Number(trimmed);
  return /^\d{1,5}$/.test(trimmed) && value >= 1 && value <= LAST_UNIVERSE ? (value as Universe) : undefined;
}
