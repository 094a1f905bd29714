import type { Clock } from '#base/clock.ts';
import { CAPS } from '#wire/caps.ts';
import type { ClientMessage, Where } from '#wire/sync/message.ts';
import type { Outbox } from './outbox.ts';

export interface SenderOptions {
  readonly clock: Clock;
  readonly outbox: Outbox;
  /** Live: what is sent now arrives. */
  readonly mayAct: () => boolean;
  readonly mayEdit: () => boolean;
  readonly send: (message: ClientMessage) => void;
  /** Everything the server lacked when the connection began, as one update: smaller than the edits when they undo each other. */
  readonly difference: () => Uint8Array;
  readonly changed: () => void;
}

/** Sends my edits and where I am, an edit at once, then at most 50 a second, merging what comes faster. */
export interface Sender {
  /** True when the next edit is larger than the server takes. */
  readonly tooLarge: boolean;
  flush(): void;
  /** A new connection has begun: everything unacknowledged is sent again. */
  restart(): void;
  setWhere(where: Where | null): void;
  stop(): void;
}

const SEND_EVERY_MS = 20;
const WHERE_EVERY_MS = 125;

export function createSender(options: SenderOptions): Sender {
  const { clock, outbox, send } = options;
  let tooLarge = false;
  let where: Where | null = null;
  let whereTold: Where | null = null;

  const edits = paced(clock, SEND_EVERY_MS, () => {
    if (!options.mayAct() || !options.mayEdit()) return;
    const next = outbox.next();
    const parcel = next === 'too-large' ? smaller() : next;
    const before = tooLarge;
    tooLarge = parcel === 'too-large';
    if (before !== tooLarge) options.changed();
    if (parcel === undefined || parcel === 'too-large') return;
    send({ kind: 'update', ...parcel });
    // What did not fit goes in the next one.
    edits.ask();
  });
  const smaller = () => {
    const bytes = options.difference();
    return bytes.length <= CAPS.syncUpdate ? outbox.allAs(bytes) : 'too-large';
  };
  const places = paced(clock, WHERE_EVERY_MS, () => {
    if (!options.mayAct() || where === whereTold) return;
    whereTold = where;
    send({ kind: 'presence', where });
  });

  return {
    get tooLarge() {
      return tooLarge;
    },
    flush: () => edits.ask(),
    restart() {
      outbox.restart();
      whereTold = null;
      edits.ask();
      places.ask();
    },
    setWhere(next) {
      where = next;
      places.ask();
    },
    stop() {
      edits.stop();
      places.stop();
    },
  };
}

interface Paced {
  ask(): void;
  stop(): void;
}

/** Runs at once when asked, and no sooner than `ms` after the last time. */
function paced(clock: Clock, ms: number, run: () => void): Paced {
  let last = Number.NEGATIVE_INFINITY;
  let cancel: (() => void) | undefined;
  let stopped = false;
  const now = () => {
    cancel = undefined;
    last = clock.now();
    run();
  };
  return {
    ask() {
      if (cancel || stopped) return;
      const wait = last + ms - clock.now();
      if (wait <= 0) now();
      else cancel = clock.after(wait, now);
    },
    stop() {
      stopped = true;
      cancel?.();
    },
  };
}
