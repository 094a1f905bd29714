import { expect, it } from 'vitest';
import { calm } from './calm.ts';
import { createListeners } from './listeners.ts';

it('tells at once, gathers what follows, and never keeps the last of it', () => {
  const source = createListeners();
  const waiting: (() => void)[] = [];
  const clock = {
    after(_ms: number, run: () => void) {
      waiting.push(run);
      return () => void waiting.splice(waiting.indexOf(run), 1);
    },
  };
  const pass = () => {
    for (const run of waiting.splice(0)) run();
  };
  let told = 0;
  const stop = calm(
    source.add,
    300,
    clock,
  )(() => {
    told += 1;
  });
  source.tell();
  expect(told).toBe(1);
  source.tell();
  source.tell();
  expect(told).toBe(1);
  pass();
  expect(told).toBe(2);
  pass();
  source.tell();
  expect(told).toBe(3);
  source.tell();
  stop();
  pass();
  source.tell();
  expect(told).toBe(3);
  expect(waiting).toEqual([]);
});
