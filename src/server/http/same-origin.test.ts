import { describe, expect, it } from 'vitest';
import { isSameOrigin } from './same-origin.ts';

const reach = (host: string, scheme: 'http' | 'https' = 'http') => ({ host, scheme, clientAddress: '10.0.0.1' });

describe('isSameOrigin', () => {
  it.each([
    ['http://rigs.local:3000', 'rigs.local:3000', 'http', true],
    ['http://10.1.2.3:3000', '10.1.2.3:3000', 'http', true],
    ['http://[fd00::1]:3000', '[fd00::1]:3000', 'http', true],
    ['http://rigs.local', 'rigs.local:80', 'http', true],
    ['https://rigs.example', 'rigs.example', 'https', true],
    // Behind a proxy that ends TLS and does not say so.
    ['https://rigs.example', 'rigs.example', 'http', true],
    ['http://rigs.example', 'rigs.example', 'https', false],
    ['http://rigs.local:3001', 'rigs.local:3000', 'http', false],
    ['http://evil.example', 'rigs.local:3000', 'http', false],
    ['http://rigs.local.evil.example:3000', 'rigs.local:3000', 'http', false],
    ['http://x.rigs.local:3000', 'rigs.local:3000', 'http', false],
    ['null', 'rigs.local:3000', 'http', false],
    ['', 'rigs.local:3000', 'http', false],
    ['rigs.local:3000', 'rigs.local:3000', 'http', false],
    ['http://rigs.local:3000', '', 'http', false],
  ] as const)('a page of %s asking %s over %s: %s', (origin, host, scheme, same) => {
    expect(isSameOrigin({ origin }, reach(host, scheme))).toBe(same);
  });

  it('refuses a request that does not say where it comes from', () => {
    expect(isSameOrigin({}, reach('rigs.local'))).toBe(false);
  });
});
