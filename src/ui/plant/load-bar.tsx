import { exceeds } from '#engine/supply/load-rules.ts';
import { barText } from '#words/supply.ts';
import { Mark } from '../kit/mark.tsx';

export interface LoadBarProps {
  /** What it is a bar of: `Line 1`, `FB-1`. */
  readonly name: string;
  readonly held: number;
  /** Null while nobody said: the bar is then drawn against `scale`. */
  readonly limit: number | null;
  /** A share of the limit that is marked on it; null for none. */
  readonly share?: number | null;
  readonly unit: 'amps' | 'kilograms';
  /** `least`: something that is not known is in it as well. */
  readonly known: 'all' | 'least';
  /** What bars without a limit are drawn against, so that they can be compared. */
  readonly scale?: number;
}

const OVER =
  'border border-blocker bg-[repeating-linear-gradient(135deg,var(--color-blocker)_0_1.5px,transparent_1.5px_6px)]';
/** Room behind the limit, so that what is over it has a place. */
const BEYOND = 1.25;

/** A load against its limit: filled up to it, hatched past it, with the words beside. The limit is a line, its share a dashed one. */
export function LoadBar({ name, held, limit, share = null, unit, known, scale = 0 }: LoadBarProps) {
  const full = limit === null ? Math.max(held, scale) : Math.max(limit * BEYOND, held);
  const percent = (value: number) => `${full === 0 ? 0 : (Math.max(0, value) / full) * 100}%`;
  const over = limit !== null && exceeds(held, limit);
  const past = !over && limit !== null && share !== null && exceeds(held, limit * share);
  return (
    <div className="flex flex-col gap-0.5">
      <p className="flex flex-wrap items-baseline gap-x-3">
        <span className="font-medium [overflow-wrap:anywhere]">{name}</span>
        <span className={`ml-auto tabular-nums ${over ? 'font-semibold' : ''}`}>
          {over ? <Mark severity="blocker" className="mr-1" /> : null}
          {past ? <Mark severity="caution" className="mr-1" /> : null}
          {barText(held, limit, unit, known)}
        </span>
      </p>
      <div
        aria-hidden="true"
        className={`relative h-3 ${limit === null ? '' : 'border-y border-l border-rule-strong'}`}
      >
        <div
          className="absolute inset-y-0.5 left-0 bg-block-ink"
          style={{ width: percent(Math.min(held, limit ?? held)) }}
        />
        {over && limit !== null ? (
          <div
            className={`absolute inset-y-0 ${OVER}`}
            style={{ left: percent(limit), width: percent(held - limit) }}
          />
        ) : null}
        {limit === null ? null : (
          <div className="absolute -inset-y-1 border-l-2 border-ink" style={{ left: percent(limit) }} />
        )}
        {limit === null || share === null ? null : (
          <div
            className="absolute -inset-y-1 border-l-2 border-dashed border-edge"
            style={{ left: percent(limit * share) }}
          />
        )}
      </div>
    </div>
  );
}
