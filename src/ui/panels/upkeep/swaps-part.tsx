import { useState } from 'react';
import { getRow } from '#base/table.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import { recordOf } from '#engine/model/record.ts';
import { byOn, swapText, UPKEEP_WORDS as words } from '#words/upkeep.ts';
import { Button } from '../../kit/button.tsx';
import { RefusedLine } from '../../plant/refused-line.tsx';
import { findUnit } from '../../upkeep/find-unit.ts';
import { SwapDialog } from '../../upkeep/swap-dialog.tsx';
import { UnitField, unitTrouble } from '../../upkeep/unit-field.tsx';
import { UnitWord } from '../../upkeep/unit-word.tsx';
import { Part } from '../part.tsx';
import type { UpkeepPartProps } from './faults-part.tsx';

/** Swaps that are drawn before one asks for all. */
const FIRST = 50;

/** Devices that were exchanged, the latest first, and the way to exchange another. */
export function SwapsPart({ scene, onUnit }: UpkeepPartProps) {
  const { store, rig, writable } = scene;
  const [unit, setUnit] = useState('');
  const [asked, setAsked] = useState<FixtureId>();
  const [refused, setRefused] = useState<string>();
  const swaps = [...recordOf(rig.cards).swaps].reverse();
  const ask = () => {
    const found = findUnit(store.rig(), unit);
    setRefused(unitTrouble(store.rig(), unit));
    if (found.is === 'one') setAsked(found.fixture.id);
  };
  return (
    <Part anchor="swaps" title={words.parts.swaps}>
      {writable === 'no' ? null : (
        <form
          aria-label={words.swap}
          className="flex max-w-xl flex-wrap items-end gap-2 py-3"
          onSubmit={(event) => {
            event.preventDefault();
            ask();
          }}
        >
          <div className="min-w-0 flex-1">
            <UnitField rig={rig} value={unit} onText={setUnit} />
          </div>
          <Button type="submit">{words.swap}…</Button>
          <RefusedLine why={refused} />
        </form>
      )}
      {swaps.length === 0 ? <p>{words.noSwaps}</p> : null}
      <ul>
        {swaps.slice(0, FIRST).map((swap) => (
          <li key={swap.id} className="flex flex-wrap gap-x-3 border-b border-rule py-1.5 [overflow-wrap:anywhere]">
            <UnitWord rig={rig} card={swap} onUnit={onUnit} />
            <span>{swapText(swap)}</span>
            <span>{swap.why}</span>
            <span className="text-soft">{byOn(swap.by, swap.on)}</span>
          </li>
        ))}
      </ul>
      {asked === undefined || getRow(rig.fixtures, asked) === undefined ? null : (
        <SwapDialog
          store={store}
          unit={asked}
          onClose={() => {
            setAsked(undefined);
            setUnit('');
          }}
        />
      )}
    </Part>
  );
}
