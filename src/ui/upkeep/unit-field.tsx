import { useId, useMemo } from 'react';
import { rowsOf } from '#base/table.ts';
import type { Fixture } from '#engine/model/fixture.ts';
import type { Rig } from '#engine/model/rig.ts';
import { unitName } from '#words/findings.ts';
import { UPKEEP_WORDS as words } from '#words/upkeep.ts';
import { TextField } from '../kit/text-field.tsx';
import { findUnit } from './find-unit.ts';

export interface UnitFieldProps {
  readonly rig: Rig;
  readonly value: string;
  readonly onText: (text: string) => void;
  readonly error?: string | undefined;
}

/** Names that a field offers: the rest are found all the same. */
const OFFERED = 2000;

/** A unit by its name, with the names there are to choose from. */
export function UnitField({ rig, value, onText, error }: UnitFieldProps) {
  const list = useId();
  const names = useMemo(() => [...new Set([...rowsOf(rig.fixtures)].slice(0, OFFERED).map(unitName))], [rig.fixtures]);
  return (
    <>
      <TextField
        label={words.unit}
        placeholder={words.unitHint}
        autoComplete="off"
        list={list}
        value={value}
        error={error}
        onText={onText}
      />
      <datalist id={list}>
        {names.map((name) => (
          <option key={name} value={name} />
        ))}
      </datalist>
    </>
  );
}

/** Why a typed name is of no one unit, as a sentence. */
export function unitTrouble(rig: Rig, text: string): string | undefined {
  const found = findUnit(rig, text);
  if (found.is === 'one') return undefined;
  return found.is === 'none' ? words.noSuchUnit : words.manySuchUnits(found.fixtures.slice(0, 4).map(unitWithChannel));
}

const unitWithChannel = (fixture: Fixture) =>
  fixture.channel === null ? unitName(fixture) : `${unitName(fixture)} (${fixture.channel})`;
