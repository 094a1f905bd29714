import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { randomClientMessage, randomServerMessage } from '#tests/support/random-messages.ts';
import { CAPS } from '../caps.ts';
import { decodeClientMessage, encodeClientMessage } from './client-message.ts';
import { SYNC_VERSION } from './message.ts';
import { decodeServerMessage, encodeServerMessage } from './server-message.ts';

const ROUNDS = 3_000;

describe('messages of the sync protocol', () => {
  it('read back as they were written', () => {
    const rng = seededRng(11);
    for (let round = 0; round < ROUNDS; round++) {
      const fromClient = randomClientMessage(rng);
      expect(decodeClientMessage(encodeClientMessage(fromClient))).toEqual({ ok: true, value: fromClient });
      const fromServer = randomServerMessage(rng);
      expect(decodeServerMessage(encodeServerMessage(fromServer))).toEqual({ ok: true, value: fromServer });
    }
  });

  it('are refused, never thrown on, when cut short, prolonged, flipped or invented', () => {
    const rng = seededRng(12);
    for (let round = 0; round < ROUNDS; round++) {
      const whole = encodeServerMessage(randomServerMessage(rng));
      expect(decodeServerMessage(whole.subarray(0, rng.int(whole.length)))).toEqual({ ok: false, error: 'malformed' });
      expect(decodeServerMessage(Uint8Array.from([...whole, 0])).ok).toBe(false);
      const flipped = Uint8Array.from(whole);
      flipped[rng.int(flipped.length)] = rng.int(256);
      decodeServerMessage(flipped);
      const noise = Uint8Array.from({ length: rng.int(60) }, () => rng.int(256));
      decodeClientMessage(noise);
      decodeServerMessage(noise);
    }
  });

  it('never hand on memory that lies beyond the frame, as Node pools buffers', () => {
    const frame = encodeClientMessage({ kind: 'update', counter: 1, bytes: Uint8Array.of(1, 2, 3) });
    const pool = new Uint8Array(100).fill(77);
    pool.set(frame, 10);
    const read = decodeClientMessage(pool.subarray(10, 10 + frame.length));
    expect(read).toEqual({ ok: true, value: { kind: 'update', counter: 1, bytes: Uint8Array.of(1, 2, 3) } });
    if (read.ok && read.value.kind === 'update') expect(read.value.bytes.buffer.byteLength).toBe(3);
    // Declares 60 bytes and brings three: the rest of the pool is none of its business.
    pool[10 + 2] = 60;
    expect(decodeClientMessage(pool.subarray(10, 10 + frame.length)).ok).toBe(false);
  });

  it('refuse declared sizes before anything of that size is made', () => {
    const huge = [0xff, 0xff, 0xff, 0xff, 0x0f];
    expect(decodeServerMessage(Uint8Array.from([1, 0, ...huge])).ok).toBe(false);
    expect(decodeClientMessage(Uint8Array.from([1, 0, ...huge])).ok).toBe(false);
  });

  it('refuse a name that is too long', () => {
    const where = { fixture: 'x'.repeat(CAPS.syncText + 1), field: 'unit' };
    expect(decodeClientMessage(encodeClientMessage({ kind: 'presence', where })).ok).toBe(false);
  });

  it('give the version of a hello of any version, whatever follows it', () => {
    const hello = Uint8Array.from([0, 99, 250, 250, 250]);
    expect(decodeClientMessage(hello)).toEqual({
      ok: true,
      value: { kind: 'hello', version: 99, have: new Uint8Array(0) },
    });
  });

  // When this fails, a message has changed: raise SYNC_VERSION, and write the new hash beside it.
  it('have the bytes that this version of the protocol has', () => {
    const rng = seededRng(13);
    const hash = createHash('sha256');
    for (let round = 0; round < 500; round++) {
      hash.update(encodeClientMessage(randomClientMessage(rng)));
      hash.update(encodeServerMessage(randomServerMessage(rng)));
    }
    expect({ version: SYNC_VERSION, hash: hash.digest('hex').slice(0, 16) }).toEqual({
      version: 2,
      hash: 'ad9c9f7dd4af2c75',
    });
  });
});
