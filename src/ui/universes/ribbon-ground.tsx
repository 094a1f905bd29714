import type { ReactNode } from 'react';
import { getRow } from '#base/table.ts';
import type { Occupancy } from '#engine/address/occupancy.ts';
import { SLOTS } from '#engine/model/address.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';
import { clashesOf } from './ribbon-blocks.ts';

export interface RibbonGroundProps {
  readonly rig: Rig;
  readonly occupancy: Occupancy;
  /** What lies on it. */
  readonly children: ReactNode;
}

/** The 512 slots under the blocks of a universe: clashes are hatched, every 50th slot has its number. */
export function RibbonGround({ rig, occupancy, children }: RibbonGroundProps) {
  return (
    <div className="min-w-0">
      <div className="relative h-8 border border-edge bg-sheet touch:h-[2.875rem]">
        {children}
        {clashesOf(occupancy, (a, b) => actAsOne(rig, a, b)).map(({ left, width }) => (
          <span
            key={left}
            className={`pointer-events-none absolute inset-y-0 z-[2] ${HATCH}`}
            style={{ left: `${left}%`, width: `${width}%` }}
          />
        ))}
      </div>
      <div aria-hidden="true" className="relative h-4 font-mono text-small leading-4 text-soft">
        {TICKS.map((slot) => (
          <span
            key={slot}
            className="absolute max-sm:nth-[even]:hidden"
            style={{ left: `${(100 * (slot - 1)) / SLOTS}%` }}
          >
            {slot}
          </span>
        ))}
      </div>
    </div>
  );
}

const HATCH =
  'border border-blocker bg-[repeating-linear-gradient(135deg,var(--color-blocker)_0_1.5px,transparent_1.5px_6px)]';
const TICKS = Array.from({ length: Math.ceil(SLOTS / 50) }, (_, n) => n * 50 + 1);

/** Units that share their start, mode and channel do so on purpose (common practice). */
function actAsOne(rig: Rig, one: FixtureId, other: FixtureId): boolean {
  const a = getRow(rig.fixtures, one);
  const b = getRow(rig.fixtures, other);
  if (a === undefined || b === undefined || a.channel === null || a.id === b.id) return false;
  return a.channel === b.channel && a.type === b.type && a.mode === b.mode && a.addresses.join() === b.addresses.join();
}
