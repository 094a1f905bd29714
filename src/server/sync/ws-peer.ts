import type { WebSocket } from 'ws';
import type { Clock } from '#base/clock.ts';
import { CLOSE } from '#wire/sync/close-code.ts';
import type { Peer } from './peer.ts';

export interface PeerListener {
  frame(bytes: Uint8Array): void;
  /** A text message, which this protocol has not. */
  text(): void;
  gone(): void;
}

/** How long a peer has to answer a close before it is cut off, in milliseconds. */
const CLOSING_MS = 1_000;
const CUTTING_MS = 300;

/** Closed for these, a peer is not read any more: what it sends would still cost as much as before. */
const CUT_OFF: ReadonlySet<number> = new Set([CLOSE.malformed, CLOSE.tooFast, CLOSE.tooLarge]);

/** A `ws` socket as a peer. Nothing is read from it before `listen`. */
export function wsPeer(socket: WebSocket, clock: Clock): Peer & { listen(listener: PeerListener): void } {
  socket.pause();
  // A broken frame or one past the cap: `ws` closes by itself, and `close` follows.
  socket.on('error', () => undefined);
  return {
    send: (frame) => socket.send(frame),
    buffered: () => socket.bufferedAmount,
    close(code) {
      const cut = CUT_OFF.has(code);
      const cancel = clock.after(cut ? CUTTING_MS : CLOSING_MS, () => socket.terminate());
      socket.once('close', cancel);
      socket.close(code);
      if (cut) socket.pause();
      else socket.resume();
    },
    listen(listener) {
      socket.on('message', (data, isBinary) => {
        if (isBinary && data instanceof Uint8Array) listener.frame(data);
        else listener.text();
      });
      socket.once('close', () => listener.gone());
      if (socket.readyState >= socket.CLOSING) listener.gone();
      else socket.resume();
    },
  };
}
