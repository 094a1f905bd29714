import type { CircuitLoad } from '#engine/supply/circuit-loads.ts';
import type { VenueRules } from '#engine/supply/load-rules.ts';
import { LoadBar } from './load-bar.tsx';

export interface CircuitBarProps {
  readonly load: CircuitLoad;
  readonly rules: VenueRules;
  readonly name: string;
  /** What circuits without a rating are compared with. */
  readonly scale: number;
}

/** A circuit against the rating of its breaker and the share of it that the rules allow for hours. */
export function CircuitBar({ load, rules, name, scale }: CircuitBarProps) {
  const isSure = load.unknown.length + load.factorless.length === 0;
  return (
    <LoadBar
      name={name}
      held={load.amps}
      limit={load.card?.rating ?? null}
      share={rules.share}
      unit="amps"
      known={isSure ? 'all' : 'least'}
      scale={scale}
    />
  );
}
