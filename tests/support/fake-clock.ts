import type { Clock } from '#base/clock.ts';

/** A clock that stands still until it is told to go on. */
export interface FakeClock extends Clock {
  /** Lets `ms` milliseconds pass, running what falls due on the way, in its order. */
  advance(ms: number): void;
}

interface Alarm {
  readonly at: number;
  readonly nth: number;
  readonly run: () => void;
}

export function createFakeClock(start = 1_000_000): FakeClock {
  let now = start;
  let count = 0;
  const alarms = new Set<Alarm>();
  const due = (until: number): Alarm | undefined => {
    let first: Alarm | undefined;
    for (const alarm of alarms)
      if (alarm.at <= until && (!first || alarm.at < first.at || (alarm.at === first.at && alarm.nth < first.nth)))
        first = alarm;
    return first;
  };
  return {
    now: () => now,
    after(ms, run) {
      const alarm = { at: now + ms, nth: ++count, run };
      alarms.add(alarm);
      return () => alarms.delete(alarm);
    },
    advance(ms) {
      const until = now + ms;
      for (let alarm = due(until); alarm; alarm = due(until)) {
        alarms.delete(alarm);
        now = Math.max(now, alarm.at);
        alarm.run();
      }
      now = until;
    },
  };
}
