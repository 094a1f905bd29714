import { IncomingMessage } from 'node:http';
import { Socket } from 'node:net';
import { describe, expect, it } from 'vitest';
import { type ReachConfig, reachOf } from './reach.ts';

const alone: ReachConfig = { trustProxy: false, publicUrl: undefined };
const behindProxy: ReachConfig = { trustProxy: true, publicUrl: undefined };
const published: ReachConfig = { trustProxy: false, publicUrl: new URL('https://rigs.example') };

function request(headers: Readonly<Record<string, string>>): IncomingMessage {
  const message = new IncomingMessage(new Socket());
  Object.assign(message.headers, headers);
  return message;
}

describe('reachOf', () => {
  it('believes no forwarded header without a proxy of ours', () => {
    const forged = {
      host: 'rigs.local',
      'x-forwarded-proto': 'https',
      'x-forwarded-for': '1.2.3.4',
      'x-forwarded-host': 'evil',
    };
    expect(reachOf(request(forged), alone)).toEqual({ scheme: 'http', host: 'rigs.local', clientAddress: 'unknown' });
  });

  it('takes from our proxy what it added last', () => {
    const headers = {
      host: 'internal:3000',
      'x-forwarded-proto': 'https',
      'x-forwarded-host': 'Rigs.Example',
      'x-forwarded-for': '6.6.6.6, 1.2.3.4',
    };
    expect(reachOf(request(headers), behindProxy)).toEqual({
      scheme: 'https',
      host: 'rigs.example',
      clientAddress: '1.2.3.4',
    });
  });

  it('knows its own public address as HTTPS, and any other name as what it is', () => {
    expect(reachOf(request({ host: 'rigs.example' }), published).scheme).toBe('https');
    expect(reachOf(request({ host: '10.0.0.5:3000' }), published).scheme).toBe('http');
  });
});
