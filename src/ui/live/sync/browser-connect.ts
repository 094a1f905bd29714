import type { Connect } from './transport.ts';

/** Connects to a sync socket of the server this page came from. `page` is `window.location`. */
export function browserConnect(page: { readonly protocol: string; readonly host: string }, path: string): Connect {
  const url = `${page.protocol === 'https:' ? 'wss' : 'ws'}://${page.host}${path}`;
  return (listener) => {
    const socket = new WebSocket(url);
    socket.binaryType = 'arraybuffer';
    let over = false;
    socket.onopen = () => {
      if (!over) listener.opened();
    };
    socket.onmessage = ({ data }) => {
      if (!over && data instanceof ArrayBuffer) listener.frame(new Uint8Array(data));
    };
    socket.onclose = ({ code }) => {
      if (!over) listener.closed(code);
      over = true;
    };
    return {
      send(frame) {
        if (socket.readyState === WebSocket.OPEN) socket.send(Uint8Array.from(frame));
      },
      close() {
        over = true;
        socket.close();
      },
    };
  };
}
