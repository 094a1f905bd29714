import { IncomingMessage } from 'node:http';
import { Socket } from 'node:net';
import { describe, expect, it } from 'vitest';
import { createFakeClock } from '#tests/support/fake-clock.ts';
import { readBody } from './read-body.ts';

function newRequest(limits = { bytes: 10, ms: 1_000 }) {
  const request = new IncomingMessage(new Socket());
  const clock = createFakeClock();
  return { request, clock, body: readBody(request, { ...limits, clock }) };
}

const bytes = (text: string) => Buffer.from(text);

describe('readBody', () => {
  it('puts pieces together, also where a character is cut in two', async () => {
    const { request, body } = newRequest();
    const whole = bytes('pär');
    request.push(whole.subarray(0, 2));
    request.push(whole.subarray(2));
    request.push(null);
    expect(await body).toEqual({ ok: true, value: 'pär' });
  });

  it('takes the very last byte that is allowed, and not one more', async () => {
    const { request, body } = newRequest();
    request.push(bytes('0123456789'));
    request.push(null);
    expect(await body).toEqual({ ok: true, value: '0123456789' });
    const larger = newRequest();
    larger.request.push(bytes('0123456789a'));
    larger.request.push(null);
    expect(await larger.body).toEqual({ ok: false, error: 'too-large' });
  });

  it('stops reading one that goes on and on', async () => {
    const { request, body } = newRequest();
    for (let n = 0; n < 20; n++) request.push(bytes('0123456789'));
    expect(await body).toEqual({ ok: false, error: 'too-large' });
  });

  it('gives up on one that is too slow, at its time and not before', async () => {
    const { request, clock, body } = newRequest();
    let settled = false;
    void body.then(() => {
      settled = true;
    });
    request.push(bytes('0'));
    clock.advance(999);
    await Promise.resolve();
    expect(settled).toBe(false);
    clock.advance(1);
    expect(await body).toEqual({ ok: false, error: 'too-slow' });
  });

  it('notices one that is cut off', async () => {
    const { request, body } = newRequest();
    request.push(bytes('0'));
    request.destroy();
    expect(await body).toEqual({ ok: false, error: 'cut-off' });
  });
});
