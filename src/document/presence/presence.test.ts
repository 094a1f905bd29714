import { describe, expect, it } from 'vitest';
import { PRESENCE_COLOURS, PRESENCE_NAME_LIMIT, presenceClaimSchema, presenceSchema } from './presence.ts';

const cell = { fixture: 'f1', field: 'channel' };

describe('presence', () => {
  it.each<[boolean, unknown]>([
    [true, { cell }],
    [true, { cell: null }],
    [false, {}],
    [false, { cell: { fixture: 'f1', field: 'nothing' } }],
    [false, { cell: { fixture: 'a/b', field: 'channel' } }],
    [false, { cell: { ...cell, at: 1 } }],
    [false, { cell, name: 'somebody else' }],
    [false, { cell, colour: 1 }],
  ])('[DO50] a claim says where a person is and never who: %s %j', (wanted, claim) => {
    expect(presenceClaimSchema.safeParse(claim).success).toBe(wanted);
  });

  it.each<[boolean, object]>([
    [true, {}],
    [false, { name: 'x'.repeat(PRESENCE_NAME_LIMIT + 1) }],
    [false, { colour: PRESENCE_COLOURS }],
    [false, { colour: -1 }],
    [false, { visit: '' }],
  ])('[DO51] what the server says of a person is capped: %s %j', (wanted, change) => {
    const presence = { visit: 'v1', name: 'Ada', colour: 0, cell, ...change };
    expect(presenceSchema.safeParse(presence).success).toBe(wanted);
  });
});
