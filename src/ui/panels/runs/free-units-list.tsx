import { useMemo, useState } from 'react';
import type { FixtureId } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';
import { unitName } from '#words/findings.ts';
import { whatIs, ADD_UNITS_WORDS as words } from '#words/runs.ts';
import { Select } from '../../kit/select.tsx';
import { fits, freeUnits, namesIn, type UnitFilter } from './free-units.ts';

export interface FreeUnitsListProps {
  readonly rig: Rig;
  readonly picked: readonly FixtureId[];
  readonly onPick: (units: readonly FixtureId[]) => void;
}

const MOST = 200;

/** The units on no run, to be picked one by one or all of a position and type. */
export function FreeUnitsList({ rig, picked, onPick }: FreeUnitsListProps) {
  const [filter, setFilter] = useState<UnitFilter>({ position: null, type: null });
  const free = useMemo(() => freeUnits(rig), [rig]);
  const shown = useMemo(() => free.filter((unit) => fits(filter, unit)), [free, filter]);
  const choose = (part: Partial<UnitFilter>) => {
    setFilter({ ...filter, ...part });
    onPick([]);
  };
  const isPicked = new Set(picked);
  const all = shown.length > 0 && shown.every(({ id }) => isPicked.has(id));
  const toggle = (id: FixtureId) => onPick(isPicked.has(id) ? picked.filter((each) => each !== id) : [...picked, id]);
  return (
    <>
      <div className="grid grid-cols-2 gap-3">
        {(['position', 'type'] as const).map((cell) => (
          <Select
            key={cell}
            label={words[cell]}
            choices={[
              { value: ANY, label: words.any },
              ...namesIn(free, cell).map(([value, name]) => ({ value, label: name || words.noPosition })),
            ]}
            value={filter[cell] ?? ANY}
            onChoose={(value) => choose({ [cell]: value === ANY ? null : value })}
          />
        ))}
      </div>
      {shown.length === 0 ? (
        <p>{words.none}</p>
      ) : (
        <fieldset className="max-h-64 overflow-y-auto border border-rule-strong px-2">
          <legend className="sr-only">{words.free}</legend>
          <Tick
            label={words.all(shown.length)}
            on={all ? 'yes' : 'no'}
            onTick={() => onPick(all ? [] : shown.map(({ id }) => id))}
          />
          {shown.slice(0, MOST).map((unit) => (
            <Tick
              key={unit.id}
              label={`${unitName(unit)} · ${whatIs(unit)}`}
              on={isPicked.has(unit.id) ? 'yes' : 'no'}
              onTick={() => toggle(unit.id)}
            />
          ))}
          {shown.length > MOST ? <p className="text-soft">{words.more(shown.length - MOST)}</p> : null}
        </fieldset>
      )}
    </>
  );
}

/** No name has a line break in it: it can stand for none at all. */
const ANY = '\n';

interface TickProps {
  readonly label: string;
  readonly on: 'yes' | 'no';
  readonly onTick: () => void;
}

const Tick = ({ label, on, onTick }: TickProps) => (
  <label className="flex min-h-control items-center gap-2">
    <input type="checkbox" className="size-4 shrink-0 accent-ink" checked={on === 'yes'} onChange={onTick} />
    <span className="min-w-0 truncate">{label}</span>
  </label>
);
