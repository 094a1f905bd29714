import type { Clock } from '#base/clock.ts';
import type { Rng } from '#base/rng.ts';

/** A process or a page: when it ends, nothing of it runs any more. */
export interface Life {
  alive: boolean;
}

interface HeldOperation {
  readonly life: Life;
  readonly letGo: (fate: Fate) => void;
}

/** How an operation ends: well; refused; done, with the answer lost; and, for the dead, done or not with nobody to hear it. */
export type Fate = 'well' | 'refused' | 'answer-lost';

/** Operations that have been asked for and have not happened yet. They happen one at a time, when the simulation says so. */
export class Held {
  private operations: HeldOperation[] = [];

  get size(): number {
    return this.operations.length;
  }

  /** `work` happens when the operation is let go, whole or not at all. */
  hold<T>(life: Life, work: () => Promise<T>): Promise<T> {
    return new Promise((resolve, reject) => {
      const letGo = async (fate: Fate) => {
        if (fate !== 'refused') {
          const value = await work();
          if (fate === 'well' && life.alive) return resolve(value);
        }
        if (life.alive) reject(new Error(`store: ${fate}`));
      };
      this.operations.push({ life, letGo: (fate) => void letGo(fate) });
    });
  }

  /** Lets one operation go, chosen by chance. */
  step(rng: Rng, fate: Fate): void {
    const [operation] = this.operations.splice(rng.int(this.operations.length), 1);
    operation?.letGo(fate);
  }

  /** A life has ended: of what it had asked for, some happens all the same. */
  end(life: Life, rng: Rng): void {
    life.alive = false;
    const its = this.operations.filter((operation) => operation.life === life);
    this.operations = this.operations.filter((operation) => operation.life !== life);
    for (const operation of its) if (rng.int(2) === 0) operation.letGo('answer-lost');
  }
}

/** A clock that stops with its life. */
export function clockOf(clock: Clock, life: Life): Clock {
  return {
    now: () => clock.now(),
    after: (ms, run) =>
      clock.after(ms, () => {
        if (life.alive) run();
      }),
  };
}
