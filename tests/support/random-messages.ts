import type { Rng } from '#base/rng.ts';
import { type ClientMessage, type Person, type ServerMessage, SYNC_VERSION, type Where } from '#wire/sync/message.ts';

const bytes = (rng: Rng): Uint8Array => Uint8Array.from({ length: rng.int(40) }, () => rng.int(256));
const number = (rng: Rng): number => rng.int(rng.pick([2, 200, 2 ** 31, Number.MAX_SAFE_INTEGER]));
const text = (rng: Rng): string => rng.pick(['', 'f1', 'Vorbühne 3', 'a\u0000b', '☂️ 雨', 'x'.repeat(200)]);
const where = (rng: Rng): Where | null => {
  const cell = { fixture: text(rng), field: text(rng) };
  return rng.pick([null, cell, { ...cell, at: 1 + number(rng) }]);
};
const list = <T>(rng: Rng, make: (rng: Rng) => T): T[] => Array.from({ length: rng.int(4) }, () => make(rng));
const person = (rng: Rng): Person => ({
  id: number(rng),
  user: text(rng),
  name: text(rng),
  colour: rng.int(9),
  where: where(rng),
});

export function randomClientMessage(rng: Rng): ClientMessage {
  return rng.pick<() => ClientMessage>([
    () => ({ kind: 'hello', version: SYNC_VERSION, have: bytes(rng) }),
    () => ({ kind: 'update', counter: number(rng), bytes: bytes(rng) }),
    () => ({ kind: 'presence', where: where(rng) }),
    () => ({ kind: 'ping' }),
  ])();
}

export function randomServerMessage(rng: Rng): ServerMessage {
  const role = rng.pick(['writer', 'reader'] as const);
  return rng.pick<() => ServerMessage>([
    () => ({
      kind: 'welcome',
      role,
      seq: number(rng),
      me: number(rng),
      missing: bytes(rng),
      have: bytes(rng),
      people: list(rng, person),
    }),
    () => ({ kind: 'updates', seq: number(rng), list: list(rng, bytes) }),
    () => ({ kind: 'ack', counter: number(rng), seq: number(rng) }),
    () => ({
      kind: 'people',
      arrived: list(rng, person),
      moved: list(rng, () => ({ id: number(rng), where: where(rng) })),
      left: list(rng, number),
    }),
    () => ({ kind: 'role', role }),
    () => ({ kind: 'pong' }),
  ])();
}
