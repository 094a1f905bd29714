import * as decoding from 'lib0/decoding';
import * as encoding from 'lib0/encoding';
import { assert } from '#base/assert.ts';
import { ok, type Result, refuse } from '#base/result.ts';
import { CAPS } from '../caps.ts';
import type { Person, SyncRole, Where } from './message.ts';

type Writer = encoding.Encoder;
type Reader = decoding.Decoder;

/** Thrown while reading and caught in `readFrame`: what came is not a message. */
class Unreadable extends Error {}

const ROLES: readonly SyncRole[] = ['writer', 'reader'];

/** Bytes of one message: `write` fills them. */
export function writeFrame(write: (to: Writer) => void): Uint8Array {
  const to = encoding.createEncoder();
  write(to);
  return encoding.toUint8Array(to);
}

/** Reads a whole message with `read`; refuses what is cut short, left over or out of range. Never throws. */
export function readFrame<T>(frame: Uint8Array, read: (from: Reader) => T | undefined): Result<T, 'malformed'> {
  try {
    const from = decoding.createDecoder(frame);
    const value = read(from);
    return value === undefined || decoding.hasContent(from) ? refuse('malformed') : ok(value);
  } catch (error) {
    assert(error instanceof Error, 'only errors are thrown while reading');
    return refuse('malformed');
  }
}

export const writeNumber = (to: Writer, value: number): void => encoding.writeVarUint(to, value);
export const readNumber = (from: Reader): number => decoding.readVarUint(from);

export const writeBytes = (to: Writer, bytes: Uint8Array): void => encoding.writeVarUint8Array(to, bytes);

/**
 * A copy in a buffer of its own: what reads on in it (Yjs) must not be able to reach past its end into memory that a
 * pooled buffer shares with other messages. The declared length is checked before anything is allocated.
 */
export function readBytes(from: Reader): Uint8Array {
  const length = readNumber(from);
  if (length > from.arr.length - from.pos) throw new Unreadable(`${length} bytes declared`);
  const bytes = new Uint8Array(length);
  bytes.set(from.arr.subarray(from.pos, from.pos + length));
  from.pos += length;
  return bytes;
}

const writeText = (to: Writer, text: string): void => encoding.writeVarString(to, text);

const utf8 = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });

function readText(from: Reader): string {
  const text = utf8.decode(readBytes(from));
  if (text.length > CAPS.syncText) throw new Unreadable(`text of ${text.length}`);
  return text;
}

export function writeList<T>(to: Writer, items: readonly T[], write: (to: Writer, item: T) => void): void {
  writeNumber(to, items.length);
  for (const item of items) write(to, item);
}

export function readList<T>(from: Reader, read: (from: Reader) => T): T[] {
  const length = readNumber(from);
  if (length > from.arr.length - from.pos) throw new Unreadable(`${length} items declared`);
  return Array.from({ length }, () => read(from));
}

export const writeRole = (to: Writer, role: SyncRole): void => writeNumber(to, ROLES.indexOf(role));

export function readRole(from: Reader): SyncRole {
  const role = ROLES[readNumber(from)];
  if (role === undefined) throw new Unreadable('no such role');
  return role;
}

export function writeWhere(to: Writer, where: Where | null): void {
  writeNumber(to, where === null ? 0 : 1);
  if (where === null) return;
  writeText(to, where.fixture);
  writeText(to, where.field);
  writeNumber(to, where.at ?? 0);
}

export function readWhere(from: Reader): Where | null {
  const present = readNumber(from);
  if (present > 1) throw new Unreadable('neither there nor not');
  if (present === 0) return null;
  const cell = { fixture: readText(from), field: readText(from) };
  const at = readNumber(from);
  return at === 0 ? cell : { ...cell, at };
}

export function writePerson(to: Writer, person: Person): void {
  writeNumber(to, person.id);
  writeText(to, person.user);
  writeText(to, person.name);
  writeNumber(to, person.colour);
  writeWhere(to, person.where);
}

export const readPerson = (from: Reader): Person => ({
  id: readNumber(from),
  user: readText(from),
  name: readText(from),
  colour: readNumber(from),
  where: readWhere(from),
});
