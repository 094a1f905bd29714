import type { Rng } from '#base/rng.ts';
import type { Connection } from '#server/sync/connection.ts';
import type { Connect, TransportListener } from '#ui/live/sync/transport.ts';
import type { Life } from './held.ts';

type Waiting = () => void;

/** One socket: what travels in each direction waits in a queue of its own. */
interface Wire {
  readonly toServer: Waiting[];
  readonly toClient: Waiting[];
  readonly heard: TransportListener;
  server: Connection | undefined;
  process: Life | undefined;
  cut: boolean;
}

/** Takes a new socket on, at a process of its choice, or closes it with a code; `nobody` when nothing listens. */
export type Accept = (
  user: string,
  peer: { send(frame: Uint8Array): void; close(code: number): void },
) => { readonly connection: Connection; readonly process: Life } | 'closed' | 'nobody';

/** A network made of queues: nothing arrives before it is delivered, and everything of one direction arrives in its order. */
export class SimNetwork {
  private wires: Wire[] = [];

  constructor(private readonly accept: Accept) {}

  get waiting(): number {
    return this.wires.reduce((sum, wire) => sum + wire.toServer.length + wire.toClient.length, 0);
  }

  /** How a page of `user` connects; `online` is asked each time. */
  connectFor(user: string, life: Life, online: () => boolean): Connect {
    return (listener) => {
      const heard = guarded(listener, life);
      const wire: Wire = { toServer: [], toClient: [], heard, server: undefined, process: undefined, cut: false };
      this.wires.push(wire);
      if (online()) wire.toServer.push(() => this.arrive(wire, user));
      else wire.toClient.push(() => heard.closed(1006));
      return {
        send: (frame) => {
          const bytes = Uint8Array.from(frame);
          if (!wire.cut && life.alive) wire.toServer.push(() => wire.server?.receive(bytes));
        },
        close: () => {
          if (wire.cut) return;
          wire.toServer.push(() => this.hangUp(wire));
          wire.toClient.length = 0;
        },
      };
    };
  }

  private arrive(wire: Wire, user: string): void {
    const { heard } = wire;
    const say = (what: Waiting) => {
      if (!wire.cut) wire.toClient.push(what);
    };
    say(() => heard.opened());
    const accepted = this.accept(user, {
      send: (frame) => say(() => heard.frame(frame)),
      close: (code) => {
        say(() => heard.closed(code));
        wire.server = undefined;
      },
    });
    if (accepted === 'nobody') {
      wire.toClient.length = 0;
      say(() => heard.closed(1006));
    } else if (accepted !== 'closed' && !accepted.connection.closed) {
      wire.server = accepted.connection;
      wire.process = accepted.process;
    }
  }

  private hangUp(wire: Wire): void {
    if (wire.process?.alive) wire.server?.left();
    wire.server = undefined;
  }

  /** Delivers one thing, chosen by chance among the heads of all queues; false when nothing waits. */
  deliver(rng: Rng): boolean {
    this.wires = this.wires.filter((wire) => wire.server || wire.toServer.length + wire.toClient.length > 0);
    const queues = this.wires.flatMap((wire) => [wire.toServer, wire.toClient]).filter((queue) => queue.length > 0);
    if (queues.length === 0) return false;
    rng.pick(queues).shift()?.();
    return true;
  }

  /** Breaks one socket: what was on its way is lost; each end may hear of it early, late, or by its own patience only. */
  cutOne(rng: Rng): void {
    if (this.wires.length > 0) this.cut(rng.pick(this.wires), rng);
  }

  /** A process has died: every socket of it breaks. */
  cutAllOf(process: Life, rng: Rng): void {
    for (const wire of this.wires) if (wire.process === process) this.cut(wire, rng);
  }

  private cut(wire: Wire, rng: Rng): void {
    if (wire.cut) return;
    wire.cut = true;
    wire.toServer.length = rng.int(wire.toServer.length + 1);
    wire.toServer.push(() => this.hangUp(wire));
    wire.toClient.length = rng.int(wire.toClient.length + 1);
    if (rng.int(4) > 0) wire.toClient.push(() => wire.heard.closed(1006));
  }
}

function guarded(listener: TransportListener, life: Life): TransportListener {
  return {
    opened: () => life.alive && listener.opened(),
    frame: (bytes) => life.alive && listener.frame(bytes),
    closed: (code) => life.alive && listener.closed(code),
  };
}
