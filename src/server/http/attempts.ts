import type { Clock } from '#base/clock.ts';

/** Counts what one address tries, minute by minute. */
export interface Attempts {
  allow(address: string): boolean;
}

export function createAttempts(perMinute: number, clock: Clock): Attempts {
  let minute = 0;
  let counts = new Map<string, number>();
  return {
    allow: (address) => {
      const now = Math.floor(clock.now() / 60_000);
      if (now !== minute) counts = new Map();
      minute = now;
      const count = (counts.get(address) ?? 0) + 1;
      counts.set(address, count);
      return count <= perMinute;
    },
  };
}
