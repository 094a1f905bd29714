import { createHash } from 'node:crypto';
import { expect, test } from 'vitest';
import { blockerKey } from './blocker-key.ts';

// Source: Node's own SHA-256 (OpenSSL), FIPS 180-4.
test.each(['', 'slots-claimed-twice', 'Ω\u0000 any sign', 'x'.repeat(50_000)])('is short for whatever key', (key) => {
  expect(blockerKey(key)).toBe(createHash('sha256').update(key, 'utf8').digest('hex').slice(0, 32));
});
