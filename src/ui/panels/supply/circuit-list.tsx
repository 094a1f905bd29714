import { useState } from 'react';
import type { CircuitLoad } from '#engine/supply/circuit-loads.ts';
import { SUPPLY_WORDS as words } from '#words/supply.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import { CircuitRow } from './circuit-row.tsx';
import { largest, type Scene } from './scene.ts';

export interface CircuitListProps {
  readonly scene: Scene;
  readonly circuits: readonly CircuitLoad[];
}

/** Circuits that are drawn before one asks for all. */
const FIRST = 100;

/** Circuits, each against its limit. */
export function CircuitList({ scene, circuits }: CircuitListProps) {
  const [all, setAll] = useState(false);
  const scale = largest(scene.circuits.map(({ amps }) => amps));
  return (
    <>
      <ul>
        {(all ? circuits : circuits.slice(0, FIRST)).map((load) => (
          <li key={load.key} className="border-b border-rule py-2">
            <CircuitRow scene={scene} load={load} scale={scale} />
          </li>
        ))}
      </ul>
      {circuits.length > FIRST && !all ? (
        <LinkButton onClick={() => setAll(true)}>{words.showAll(circuits.length)}</LinkButton>
      ) : null}
    </>
  );
}
