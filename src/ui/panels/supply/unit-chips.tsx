import { useState } from 'react';
import type { Fixture } from '#engine/model/fixture.ts';
import { unitName } from '#words/findings.ts';
import { SUPPLY_WORDS as words } from '#words/supply.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import type { Scene } from './scene.ts';

export interface UnitChipsProps {
  readonly scene: Scene;
  readonly units: readonly Fixture[];
  /** `number`: they hang together, so that their numbers will do. */
  readonly called?: 'name' | 'number';
  /** Said when there is none. */
  readonly none: string;
}

/** Units that are shown before one asks for all. */
const FIRST = 16;

/** Units, each to be chosen: the choice is that of the sheet. */
export function UnitChips({ scene, units, called = 'name', none }: UnitChipsProps) {
  const [all, setAll] = useState(false);
  if (units.length === 0) return <p className="text-soft">{none}</p>;
  const shown = all ? units : units.slice(0, FIRST);
  return (
    <ul className="flex flex-wrap gap-1">
      {shown.map((unit) => (
        <li key={unit.id}>
          <button
            type="button"
            aria-label={unitName(unit)}
            aria-pressed={scene.chosen.has(unit.id)}
            className="inline-flex min-h-control items-center rounded-control border border-rule-strong bg-sheet px-2 text-small hover:bg-hover aria-pressed:border-ink aria-pressed:bg-selected aria-pressed:font-semibold"
            onClick={() => scene.onChoose(unit.id)}
          >
            {called === 'number' && unit.unit.trim() !== '' ? unit.unit.trim() : unitName(unit)}
          </button>
        </li>
      ))}
      {units.length > shown.length ? (
        <li>
          <LinkButton onClick={() => setAll(true)}>{words.more(units.length - shown.length)}</LinkButton>
        </li>
      ) : null}
    </ul>
  );
}
