import type { FixtureId } from '#engine/model/ids.ts';
import type { CircuitLoad } from '#engine/supply/circuit-loads.ts';
import type { LoadRules } from '#engine/supply/load-rules.ts';
import { LOADS_WORDS as words } from '#words/loads.ts';
import { Mark } from '../../../kit/mark.tsx';
import { UnitLinks } from './unit-links.tsx';

export interface CircuitPartProps {
  readonly load: CircuitLoad;
  readonly rules: LoadRules;
  /** The largest load of any circuit in amps, which the bar is drawn against. */
  readonly most: number;
  readonly onGo: (fixture: FixtureId) => void;
}

/** What one circuit carries, of what that is not known, and what the manuals allow on a breaker. */
export function CircuitPart({ load, rules, most, onGo }: CircuitPartProps) {
  const { circuit, units, unknown, factorless, unsuited, limits } = load;
  return (
    <>
      <h4 className="flex flex-wrap items-baseline gap-x-3">
        <span className="flex-1 text-large font-semibold">{circuit === '' ? words.noCircuit : circuit}</span>
        <span className="text-large tabular-nums">{figure(load)}</span>
      </h4>
      {/* Without a frame: the end of a frame would look like a limit. */}
      <div
        aria-hidden="true"
        className="h-2 bg-block-ink"
        style={{ width: `${most === 0 ? 0 : (load.amps / most) * 100}%` }}
      />
      <p className="text-soft">
        {words.units(units.length)} · {words.rating(load.rating, rules)}
      </p>
      <UnitLinks text={words.unknown(unknown.length)} units={unknown} onGo={onGo} />
      <UnitLinks text={words.unsuited(unsuited.length, rules.volts)} units={unsuited} onGo={onGo} />
      {factorless.length === 0 ? null : (
        <p>
          <Mark severity="caution" /> {words.factorless(factorless.length)}
        </p>
      )}
      {limits.map((limit) => {
        const text = words.limit(limit.type, limit.units, limit.breaker, limit.most);
        return <p key={text}>{text}</p>;
      })}
    </>
  );
}

function figure({ units, amps, watts, unknown, factorless }: CircuitLoad): string {
  if (unknown.length === units.length) return words.nothingKnown;
  return unknown.length + factorless.length === 0 ? words.load(amps, watts) : words.leastLoad(amps, watts);
}
