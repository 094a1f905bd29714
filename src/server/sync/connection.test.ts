import { describe, expect, it } from 'vitest';
import { createFakeClock } from '#tests/support/fake-clock.ts';
import { CAPS } from '#wire/caps.ts';
import { encodeClientMessage } from '#wire/sync/client-message.ts';
import { CLOSE } from '#wire/sync/close-code.ts';
import { type ClientMessage, SYNC_VERSION } from '#wire/sync/message.ts';
import { Connection, type ConnectionHost } from './connection.ts';

/** A connection whose peer reads only when `buffered` is made smaller. */
function open() {
  const clock = createFakeClock();
  const peer = { waiting: 0, codes: [] as number[], sent: 0 };
  let gone = 0;
  const host: ConnectionHost = {
    hello: () => undefined,
    update: () => undefined,
    presence: () => undefined,
    gone: () => {
      gone += 1;
    },
  };
  const connection = new Connection(
    { user: 'ann', name: 'Ann', role: 'writer' },
    {
      send: (frame) => {
        peer.waiting += frame.length;
        peer.sent += 1;
      },
      buffered: () => peer.waiting,
      close: (code) => peer.codes.push(code),
    },
    host,
    clock,
  );
  const say = (message: ClientMessage) => connection.receive(encodeClientMessage(message));
  return { clock, peer, connection, say, goneTimes: () => gone };
}

const frame = (bytes: number) => new Uint8Array(bytes);

describe('connection', () => {
  it('cuts a slow reader off once more waits than the cap, and tells its host once', () => {
    const { peer, connection, goneTimes } = open();
    while (peer.codes.length === 0) connection.send(frame(100_000));
    expect(peer.waiting).toBeLessThanOrEqual(CAPS.syncSendBuffer + 100_000);
    connection.close(CLOSE.fenced);
    connection.left();
    connection.send(frame(1));
    expect(peer.codes).toEqual([CLOSE.tryAgain]);
    expect(goneTimes()).toBe(1);
  });

  it('allows the first document on top, until it has been read', () => {
    const { peer, connection } = open();
    connection.sendDocument(frame(20_000_000));
    for (let nth = 0; nth < 30; nth++) connection.send(frame(100_000));
    expect(peer.codes).toEqual([]);
    peer.waiting = 0;
    connection.send(frame(1));
    while (peer.codes.length === 0) connection.send(frame(100_000));
    expect(peer.waiting).toBeLessThanOrEqual(CAPS.syncSendBuffer + 100_001);
  });

  it('is closed when nothing is heard for a minute, and when nothing leaves for half a minute', () => {
    const silent = open();
    for (let tick = 0; tick < 13; tick++) silent.connection.tick();
    expect(silent.peer.codes).toEqual([CLOSE.tryAgain]);
    const stalled = open();
    stalled.connection.send(frame(1000));
    for (let tick = 0; tick < 8; tick++) {
      stalled.say({ kind: 'ping' });
      stalled.connection.tick();
    }
    expect(stalled.peer.codes).toEqual([CLOSE.tryAgain]);
  });

  it('lasts while the peer pings and reads', () => {
    const { peer, connection, say } = open();
    for (let tick = 0; tick < 100; tick++) {
      say({ kind: 'ping' });
      peer.waiting = 0;
      connection.tick();
    }
    expect(peer.codes).toEqual([]);
  });

  it('lets the rate of a busy client through for ever, and no more', () => {
    const { clock, peer, say } = open();
    for (let nth = 0; nth < 10_000; nth++) {
      say({ kind: 'ping' });
      clock.advance(10);
    }
    expect(peer.codes).toEqual([]);
    for (let nth = 0; nth < 2_000; nth++) {
      say({ kind: 'ping' });
      clock.advance(5);
    }
    expect(peer.codes).toEqual([CLOSE.tooFast]);
  });

  it('says hello once', () => {
    const { peer, say } = open();
    const hello = { kind: 'hello', version: SYNC_VERSION, have: Uint8Array.of(0) } as const;
    say(hello);
    expect(peer.codes).toEqual([]);
    say(hello);
    expect(peer.codes).toEqual([CLOSE.malformed]);
  });
});
