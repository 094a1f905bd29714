import { once } from 'node:events';
import { type AddressInfo, connect, createServer, type Socket } from 'node:net';

/** A network cable on loopback between a browser and the server that can be pulled out and put back. */
export interface Cable {
  /** The address to open in the browser, with no slash at its end. */
  readonly address: string;
  /** Everything that runs over it breaks, and nothing new comes through. */
  pull(): void;
  plug(): void;
  close(): void;
}

/** Lays a cable to `server` (an http address on this machine). `name` is what the browser calls it. */
export async function layCable(server: string, name = 'localhost'): Promise<Cable> {
  const target = Number(new URL(server).port);
  const sockets = new Set<Socket>();
  let plugged = true;
  const listener = createServer((near) => {
    if (!plugged) return near.destroy();
    const far = connect(target, '127.0.0.1');
    for (const [socket, other] of [
      [near, far],
      [far, near],
    ] as const) {
      sockets.add(socket);
      // An end is passed on by the pipe, once everything before it has arrived; only a break breaks the other side.
      socket.on('error', () => other.destroy());
      socket.on('close', (broken) => {
        sockets.delete(socket);
        if (broken || !plugged) other.destroy();
      });
      socket.pipe(other);
    }
    return undefined;
  });
  listener.listen(0, '127.0.0.1');
  await once(listener, 'listening');
  const cut = () => {
    plugged = false;
    for (const socket of sockets) socket.destroy();
  };
  return {
    address: `http://${name}:${(listener.address() as AddressInfo).port}`,
    pull: cut,
    plug: () => {
      plugged = true;
    },
    close: () => {
      cut();
      listener.close();
    },
  };
}
