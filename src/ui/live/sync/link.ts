import type { Clock } from '#base/clock.ts';
import type { Rng } from '#base/rng.ts';
import { encodeClientMessage } from '#wire/sync/client-message.ts';
import { CLOSE } from '#wire/sync/close-code.ts';
import { type ClientMessage, type ServerMessage, SYNC_VERSION } from '#wire/sync/message.ts';
import { decodeServerMessage } from '#wire/sync/server-message.ts';
import type { SyncTrouble } from './sync-state.ts';
import type { Connect, Transport } from './transport.ts';

type LinkPhase = 'offline' | 'connecting' | 'syncing' | 'live' | 'stopped';

export interface LinkOptions {
  readonly connect: Connect;
  readonly clock: Clock;
  readonly rng: Rng;
  /** The state vector to say hello with. */
  readonly have: () => Uint8Array;
  readonly message: (message: ServerMessage) => void;
  /** The phase or the trouble changed. */
  readonly changed: () => void;
}

/** The connection to the server: comes back by itself, and notices when the far end is gone. */
export interface LinkToServer {
  readonly phase: LinkPhase;
  readonly trouble: SyncTrouble | undefined;
  /** Sends when live; what is sent while not live is dropped. */
  send(message: ClientMessage): void;
  /** The network or the page is back: connect now, or make sure that the connection still lives. */
  nudge(): void;
  close(): void;
}

const OPENING_MS = 10_000;
/** The first answer may carry a whole document over a slow line. */
const WELCOME_MS = 120_000;
const PING_EVERY_MS = 15_000;
const PONG_MS = 10_000;
const NUDGED_PONG_MS = 3_000;
const FIRST_RETRY_MS = 250;
const LAST_RETRY_MS = 10_000;
/** A connection that lived so long was a good one: the next trouble starts with short waits again. */
const GOOD_MS = 5_000;

const STOPS: ReadonlyMap<number, SyncTrouble> = new Map([
  [CLOSE.signedOut, 'signed-out'],
  [CLOSE.noSuchRig, 'no-such-rig'],
  [CLOSE.otherVersion, 'other-version'],
]);
/** The server will not like it better at once. */
const CALM: ReadonlySet<number> = new Set([CLOSE.tooFast, CLOSE.malformed, CLOSE.tooLarge]);

export function createLink(options: LinkOptions): LinkToServer {
  const { clock } = options;
  let phase: LinkPhase = 'offline';
  let trouble: SyncTrouble | undefined;
  let transport: Transport | undefined;
  let failures = 0;
  let liveSince = 0;
  let closed = false;
  /** What happens next by itself: another try, the end of waiting for an answer, the next ping. */
  const next = timer(clock);
  /** Runs while a ping has not been answered. */
  const pong = timer(clock);

  const turn = (to: LinkPhase): void => {
    phase = to;
    options.changed();
  };

  const open = (): void => {
    transport?.close();
    trouble = undefined;
    let current = true;
    const mine = options.connect({
      opened() {
        if (!current) return;
        next.set(WELCOME_MS, () => fail(1006));
        mine.send(encodeClientMessage({ kind: 'hello', version: SYNC_VERSION, have: options.have() }));
        turn('syncing');
      },
      frame(bytes) {
        if (current) hear(bytes);
      },
      closed(code) {
        if (current) fail(code);
      },
    });
    const close = () => {
      current = false;
      mine.close();
    };
    transport = { send: (frame) => mine.send(frame), close };
    next.set(OPENING_MS, () => fail(1006));
    turn('connecting');
  };

  const fail = (code: number): void => {
    transport?.close();
    transport = undefined;
    pong.cancel();
    failures = phase === 'live' && clock.now() - liveSince >= GOOD_MS ? 1 : failures + 1;
    trouble = STOPS.get(code);
    if (trouble) next.cancel();
    else next.set(retryAfter(code), open);
    turn(trouble ? 'stopped' : 'offline');
  };

  const retryAfter = (code: number): number => {
    const doublings = Math.max(CALM.has(code) ? 3 : 0, failures - 1);
    return Math.min(LAST_RETRY_MS, FIRST_RETRY_MS * 2 ** doublings) * (0.5 + 0.5 * options.rng.next());
  };

  const hear = (bytes: Uint8Array): void => {
    const message = decodeServerMessage(bytes);
    pong.cancel();
    if (!message.ok) fail(CLOSE.malformed);
    else if (message.value.kind === 'welcome') {
      liveSince = clock.now();
      phase = 'live';
      next.set(PING_EVERY_MS, pingAndAgain);
      options.message(message.value);
    } else if (phase === 'live') options.message(message.value);
  };

  const ping = (patienceMs: number): void => {
    transport?.send(encodeClientMessage({ kind: 'ping' }));
    pong.set(patienceMs, () => fail(1006));
  };
  // Also while others are heard: the server wants to know that somebody is there.
  const pingAndAgain = (): void => {
    ping(PONG_MS);
    next.set(PING_EVERY_MS, pingAndAgain);
  };

  open();
  return {
    get phase() {
      return phase;
    },
    get trouble() {
      return trouble;
    },
    send(message) {
      if (phase === 'live') transport?.send(encodeClientMessage(message));
    },
    nudge() {
      if (closed) return;
      if (phase === 'live') ping(NUDGED_PONG_MS);
      else if (phase === 'offline' || phase === 'stopped') open();
    },
    close() {
      closed = true;
      next.cancel();
      pong.cancel();
      transport?.close();
      transport = undefined;
      phase = 'offline';
    },
  };
}

interface Timer {
  set(ms: number, run: () => void): void;
  cancel(): void;
}

/** One thing to do later; setting it anew forgets the one before. */
function timer(clock: Clock): Timer {
  let stop: (() => void) | undefined;
  const cancel = () => {
    stop?.();
    stop = undefined;
  };
  return {
    set(ms, run) {
      cancel();
      stop = clock.after(ms, run);
    },
    cancel,
  };
}
