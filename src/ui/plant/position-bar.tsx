import { heldBy, type PositionLoad } from '#engine/supply/position-loads.ts';
import { LoadBar } from './load-bar.tsx';

export interface PositionBarProps {
  readonly load: PositionLoad;
  readonly name: string;
  /** What positions without a limit are compared with. */
  readonly scale: number;
}

/** A position against its limit. */
export function PositionBar({ load, name, scale }: PositionBarProps) {
  return (
    <LoadBar
      name={name}
      held={heldBy(load)}
      limit={load.limit?.kilograms ?? null}
      unit="kilograms"
      known={load.unknown.length === 0 ? 'all' : 'least'}
      scale={scale}
    />
  );
}
