import type { Result } from '#base/result.ts';
import { unreachable } from '#base/unreachable.ts';
import {
  readBytes,
  readFrame,
  readNumber,
  readWhere,
  writeBytes,
  writeFrame,
  writeNumber,
  writeWhere,
} from './frame.ts';
import { type ClientMessage, SYNC_VERSION } from './message.ts';

/** Kinds by their number on the wire. The number and the version of `hello` stay where they are in every version. */
const KINDS = ['hello', 'update', 'presence', 'ping'] as const;

export function encodeClientMessage(message: ClientMessage): Uint8Array {
  return writeFrame((to) => {
    writeNumber(to, KINDS.indexOf(message.kind));
    switch (message.kind) {
      case 'hello':
        writeNumber(to, message.version);
        return writeBytes(to, message.have);
      case 'update':
        writeNumber(to, message.counter);
        return writeBytes(to, message.bytes);
      case 'presence':
        return writeWhere(to, message.where);
      case 'ping':
        return;
      default:
        return unreachable(message);
    }
  });
}

/** Total: any bytes give a message or `malformed`. A hello of another version gives its version and no state. */
export function decodeClientMessage(frame: Uint8Array): Result<ClientMessage, 'malformed'> {
  return readFrame(frame, (from): ClientMessage | undefined => {
    const kind = KINDS[readNumber(from)];
    switch (kind) {
      case 'hello': {
        const version = readNumber(from);
        if (version === SYNC_VERSION) return { kind, version, have: readBytes(from) };
        from.pos = from.arr.length;
        return { kind, version, have: new Uint8Array(0) };
      }
      case 'update':
        return { kind, counter: readNumber(from), bytes: readBytes(from) };
      case 'presence':
        return { kind, where: readWhere(from) };
      case 'ping':
        return { kind };
      case undefined:
        return undefined;
      default:
        return unreachable(kind);
    }
  });
}
