import type { Result } from '#base/result.ts';
import { unreachable } from '#base/unreachable.ts';
import {
  readBytes,
  readFrame,
  readList,
  readNumber,
  readPerson,
  readRole,
  readWhere,
  writeBytes,
  writeFrame,
  writeList,
  writeNumber,
  writePerson,
  writeRole,
  writeWhere,
} from './frame.ts';
import type { ServerMessage } from './message.ts';

const KINDS = ['welcome', 'updates', 'ack', 'people', 'role', 'pong'] as const;

export function encodeServerMessage(message: ServerMessage): Uint8Array {
  return writeFrame((to) => {
    writeNumber(to, KINDS.indexOf(message.kind));
    switch (message.kind) {
      case 'welcome':
        writeRole(to, message.role);
        writeNumber(to, message.seq);
        writeNumber(to, message.me);
        writeBytes(to, message.missing);
        writeBytes(to, message.have);
        return writeList(to, message.people, writePerson);
      case 'updates':
        writeNumber(to, message.seq);
        return writeList(to, message.list, writeBytes);
      case 'ack':
        writeNumber(to, message.counter);
        return writeNumber(to, message.seq);
      case 'people':
        writeList(to, message.arrived, writePerson);
        writeList(to, message.moved, (_, moved) => {
          writeNumber(to, moved.id);
          writeWhere(to, moved.where);
        });
        return writeList(to, message.left, writeNumber);
      case 'role':
        return writeRole(to, message.role);
      case 'pong':
        return;
      default:
        return unreachable(message);
    }
  });
}

/** Total: any bytes give a message or `malformed`. */
export function decodeServerMessage(frame: Uint8Array): Result<ServerMessage, 'malformed'> {
  return readFrame(frame, (from): ServerMessage | undefined => {
    const kind = KINDS[readNumber(from)];
    switch (kind) {
      case 'welcome':
        return {
          kind,
          role: readRole(from),
          seq: readNumber(from),
          me: readNumber(from),
          missing: readBytes(from),
          have: readBytes(from),
          people: readList(from, readPerson),
        };
      case 'updates':
        return { kind, seq: readNumber(from), list: readList(from, readBytes) };
      case 'ack':
        return { kind, counter: readNumber(from), seq: readNumber(from) };
      case 'people':
        return {
          kind,
          arrived: readList(from, readPerson),
          moved: readList(from, () => ({ id: readNumber(from), where: readWhere(from) })),
          left: readList(from, readNumber),
        };
      case 'role':
        return { kind, role: readRole(from) };
      case 'pong':
        return { kind };
      case undefined:
        return undefined;
      default:
        return unreachable(kind);
    }
  });
}
