import type { Clock } from '#base/clock.ts';

type Subscribe = (listen: () => void) => () => void;

/**
 * A subscription that tells at once, and then at most every `ms` milliseconds while more is told: for what takes long to
 * draw and nobody can read faster. What was told last is always told on.
 */
export function calm(subscribe: Subscribe, ms: number, clock: Pick<Clock, 'after'>): Subscribe {
  return (listen) => {
    let stopWaiting: (() => void) | undefined;
    let missed = false;
    const tell = () => {
      missed = false;
      listen();
      stopWaiting = clock.after(ms, () => {
        stopWaiting = undefined;
        if (missed) tell();
      });
    };
    const stop = subscribe(() => {
      if (stopWaiting === undefined) tell();
      else missed = true;
    });
    return () => {
      stop();
      stopWaiting?.();
    };
  };
}
