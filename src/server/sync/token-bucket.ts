import type { Clock } from '#base/clock.ts';

/** Lets `perSecond` units through lastingly and `burst` at once. */
export interface TokenBucket {
  /** True when `units` may pass now; they count only then. */
  take(units: number): boolean;
}

export function tokenBucket(
  clock: Clock,
  { perSecond, burst }: { readonly perSecond: number; readonly burst: number },
): TokenBucket {
  let left = burst;
  let at = clock.now();
  return {
    take(units) {
      const now = clock.now();
      left = Math.min(burst, left + (Math.max(0, now - at) * perSecond) / 1000);
      at = now;
      if (units > left) return false;
      left -= units;
      return true;
    },
  };
}
