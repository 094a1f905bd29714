import { WebSocket } from 'ws';
import type { Connect } from '#ui/live/sync/transport.ts';

/** Connects the client core over a real socket, as a browser would. `open` makes the socket. */
export function wsConnect(open: () => WebSocket): Connect {
  return (listener) => {
    const socket = open();
    let over = false;
    socket.on('error', () => undefined);
    socket.on('open', () => over || listener.opened());
    socket.on('message', (data: Buffer) => over || listener.frame(data));
    socket.on('close', (code) => {
      if (!over) listener.closed(code);
      over = true;
    });
    return {
      send: (frame) => {
        if (socket.readyState === WebSocket.OPEN) socket.send(frame);
      },
      close: () => {
        over = true;
        socket.terminate();
      },
    };
  };
}
