import type { FixtureId } from '#engine/model/ids.ts';
import type { PositionLoad } from '#engine/supply/position-loads.ts';
import { LOADS_WORDS as words } from '#words/loads.ts';
import { UnitLinks } from './unit-links.tsx';

export interface PositionPartProps {
  readonly load: PositionLoad;
  readonly onGo: (fixture: FixtureId) => void;
}

/** What hangs at one position, and of what that is not known. */
export function PositionPart({ load, onGo }: PositionPartProps) {
  const { position, units, unknown } = load;
  return (
    <>
      <h4 className="flex flex-wrap items-baseline gap-x-3">
        <span className="flex-1 text-large font-semibold">{position === '' ? words.noPosition : position}</span>
        <span className="text-large tabular-nums">{figure(load)}</span>
      </h4>
      <p className="text-soft">{words.units(units.length)}</p>
      <UnitLinks text={words.unweighed(unknown.length)} units={unknown} onGo={onGo} />
    </>
  );
}

function figure({ units, kilograms, unknown }: PositionLoad): string {
  if (unknown.length === units.length) return words.nothingKnown;
  return unknown.length === 0 ? words.weight(kilograms) : words.leastWeight(kilograms);
}
