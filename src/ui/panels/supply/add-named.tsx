import { useState } from 'react';
import { addNamed } from '#engine/supply/feed-plans.ts';
import { SUPPLY_WORDS as words } from '#words/supply.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import { AskNameDialog } from '../ask-name-dialog.tsx';
import { carryOut, type Scene } from './scene.ts';

export interface AddNamedProps {
  readonly scene: Scene;
  readonly kind: 'supply' | 'circuit';
  /** The supply that a new circuit is on. */
  readonly supply?: string;
}

const ADD = { supply: words.addSupply, circuit: words.addCircuit } as const;

/** Asks for a name and adds a supply or circuit of it. */
export function AddNamed({ scene, kind, supply }: AddNamedProps) {
  const [asking, setAsking] = useState(false);
  const [refused, setRefused] = useState<string>();
  if (scene.writable === 'no') return null;
  const add = (name: string) => {
    const cells = supply === undefined ? {} : { supply };
    const why = carryOut(scene, addNamed(scene.store.rig(), kind, name, cells));
    setRefused(why);
    setAsking(why !== undefined);
  };
  const close = () => {
    setAsking(false);
    setRefused(undefined);
  };
  return (
    <>
      <LinkButton onClick={() => setAsking(true)}>{ADD[kind]}</LinkButton>
      {asking ? (
        <AskNameDialog
          title={ADD[kind]}
          label={words.nameOf[kind]}
          submit={words.addWord}
          busy={false}
          refused={refused === undefined ? undefined : { what: refused }}
          onName={add}
          onClose={close}
        />
      ) : null}
    </>
  );
}
