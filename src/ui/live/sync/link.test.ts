import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { createFakeClock } from '#tests/support/fake-clock.ts';
import { decodeClientMessage } from '#wire/sync/client-message.ts';
import { CLOSE } from '#wire/sync/close-code.ts';
import type { ServerMessage } from '#wire/sync/message.ts';
import { encodeServerMessage } from '#wire/sync/server-message.ts';
import { createLink } from './link.ts';
import type { TransportListener } from './transport.ts';

interface Tried {
  readonly at: number;
  readonly listener: TransportListener;
  readonly sent: string[];
  closed: boolean;
}

function open() {
  const clock = createFakeClock();
  const tries: Tried[] = [];
  const link = createLink({
    connect: (listener) => {
      const one: Tried = { at: clock.now(), listener, sent: [], closed: false };
      tries.push(one);
      return {
        send: (frame) => {
          const message = decodeClientMessage(frame);
          one.sent.push(message.ok ? message.value.kind : 'malformed');
        },
        close: () => {
          one.closed = true;
        },
      };
    },
    clock,
    rng: seededRng(1),
    have: () => Uint8Array.of(0),
    message: () => undefined,
    changed: () => undefined,
  });
  const last = () => {
    const one = tries.at(-1);
    if (!one) throw new Error('never tried');
    return one;
  };
  const hear = (message: ServerMessage) => last().listener.frame(encodeServerMessage(message));
  const goLive = () => {
    last().listener.opened();
    const empty = Uint8Array.of(0);
    hear({ kind: 'welcome', role: 'writer', seq: 0, me: 1, missing: Uint8Array.of(0, 0), have: empty, people: [] });
  };
  return { clock, link, tries, last, hear, goLive };
}

describe('link to the server', () => {
  it('says hello when it is open, and is live once welcome', () => {
    const { link, last, goLive } = open();
    expect(link.phase).toBe('connecting');
    last().listener.opened();
    expect([link.phase, last().sent]).toEqual(['syncing', ['hello']]);
    goLive();
    expect(link.phase).toBe('live');
  });

  it('tries again by itself, with longer and longer waits up to ten seconds', () => {
    const { clock, link, tries, last } = open();
    for (let nth = 0; nth < 12; nth++) {
      last().listener.closed(1006);
      expect(link.phase).toBe('offline');
      clock.advance(10_000);
    }
    expect(tries.length).toBeGreaterThan(12);
    const waits = tries.slice(1).map((one, nth) => one.at - (tries[nth]?.at ?? 0));
    expect(Math.max(...waits)).toBeLessThanOrEqual(20_000);
  });

  it('waits a quarter of a second at first, never less than half of that', () => {
    const { clock, tries, last } = open();
    last().listener.closed(1006);
    clock.advance(124);
    expect(tries).toHaveLength(1);
    clock.advance(126);
    expect(tries).toHaveLength(2);
  });

  it('comes back at once when it is nudged', () => {
    const { link, tries, last } = open();
    last().listener.closed(1006);
    link.nudge();
    expect([tries.length, link.phase]).toEqual([2, 'connecting']);
  });

  it.each([
    [CLOSE.signedOut, 'signed-out'],
    [CLOSE.noSuchRig, 'no-such-rig'],
    [CLOSE.otherVersion, 'other-version'],
  ] as const)('stops at code %i until it is nudged', (code, trouble) => {
    const { clock, link, tries, last } = open();
    last().listener.closed(code);
    clock.advance(1_000_000);
    expect([link.phase, link.trouble, tries.length]).toEqual(['stopped', trouble, 1]);
    link.nudge();
    expect([link.phase, link.trouble]).toEqual(['connecting', undefined]);
  });

  it('pings, and gives a far end up that does not answer', () => {
    const { clock, link, last, hear, goLive } = open();
    goLive();
    for (let nth = 0; nth < 10; nth++) {
      clock.advance(15_000);
      hear({ kind: 'pong' });
    }
    expect([link.phase, last().sent.filter((kind) => kind === 'ping').length]).toEqual(['live', 10]);
    const deaf = last();
    clock.advance(25_000);
    expect(deaf.closed).toBe(true);
    expect(link.phase).not.toBe('live');
  });

  it('finds out within three seconds after a nudge that the far end is gone', () => {
    const { clock, link, goLive } = open();
    goLive();
    link.nudge();
    clock.advance(3_000);
    expect(link.phase).toBe('offline');
  });

  it('gives up an attempt that never opens, and a socket that says nothing it understands', () => {
    const { clock, link, last } = open();
    clock.advance(10_000);
    expect(link.phase).toBe('offline');
    link.nudge();
    last().listener.opened();
    last().listener.frame(Uint8Array.of(99));
    expect(link.phase).toBe('offline');
  });

  it('is not disturbed by what an earlier attempt still says', () => {
    const { link, tries, last, goLive } = open();
    last().listener.closed(1006);
    link.nudge();
    goLive();
    tries[0]?.listener.closed(CLOSE.signedOut);
    expect(link.phase).toBe('live');
    link.close();
    expect(last().closed).toBe(true);
  });
});
