import { describe, expect, it } from 'vitest';
import { createFakeClock } from '#tests/support/fake-clock.ts';
import { type Appender, createGroupCommit } from './group-commit.ts';
import { createMemoryLog } from './memory-log.ts';
import { FencedOff, type NewUpdate, type UpdateLog } from './update-log.ts';

type Answer = (number | FencedOff)[] | Error;

/** A log whose statements are answered by hand. */
function open(queueBytes = 1000) {
  const clock = createFakeClock();
  const statements: {
    readonly batch: readonly { readonly update: NewUpdate }[];
    readonly answer: (answer: Answer) => Promise<void>;
  }[] = [];
  const log: UpdateLog = {
    ...createMemoryLog(),
    append: (batch) =>
      new Promise((resolve, reject) => {
        const answer = async (what: Answer) => {
          if (what instanceof Error) reject(what);
          else resolve(what);
          await settle();
        };
        statements.push({ batch, answer });
      }),
  };
  const commit = createGroupCommit<string>({ log, clock, queueBytes, turn: () => Promise.resolve() });
  const told: string[] = [];
  const appender = (name: string): Appender<string> => ({
    fence: 1,
    committed: (list) => told.push(...list.map(({ tag, seq }) => `${tag}=${seq}`)),
    failed: (reason) => told.push(`${name} ${reason}`),
  });
  const send = (to: Appender<string>, tag: string, length = 1) =>
    commit.submit(to, { rig: 'rig', author: 'a', at: new Date(0), bytes: new Uint8Array(length) }, tag);
  const batches = () => statements.map(({ batch }) => batch.length);
  return { clock, commit, statements, batches, told, appender, send };
}

const settle = () => new Promise<void>((resolve) => setImmediate(resolve));

describe('group commit', () => {
  it('has one statement in flight; what arrives meanwhile joins the next, and everybody is told in their order', async () => {
    const { commit, statements, batches, told, appender, send } = open();
    const [a, b] = [appender('a'), appender('b')];
    send(a, 'a1');
    await settle();
    for (const tag of ['a2', 'a3']) send(a, tag);
    send(b, 'b1');
    await settle();
    expect(batches()).toEqual([1]);
    await statements[0]?.answer([1]);
    expect(batches()).toEqual([1, 3]);
    await statements[1]?.answer([2, 3, 1]);
    expect(told).toEqual(['a1=1', 'a2=2', 'a3=3', 'b1=1']);
    await commit.idle();
  });

  it('puts what arrives in one turn into one statement', async () => {
    const { batches, appender, send } = open();
    const a = appender('a');
    for (let nth = 0; nth < 50; nth++) send(a, `a${nth}`);
    await settle();
    expect(batches()).toEqual([50]);
  });

  it('gives up what waits behind a failed update of the same rig, and nothing else', async () => {
    const { statements, batches, told, appender, send } = open();
    const [a, b] = [appender('a'), appender('b')];
    send(a, 'a1');
    await settle();
    send(a, 'a2');
    send(b, 'b1');
    await statements[0]?.answer(new Error('no space'));
    expect(told).toEqual(['a store']);
    expect(batches()).toEqual([1, 1]);
    await statements[1]?.answer([1]);
    expect(told).toEqual(['a store', 'b1=1']);
  });

  it('tells one rig that it was fenced off, and the others of the batch that they are committed', async () => {
    const { statements, told, appender, send } = open();
    const [a, b] = [appender('a'), appender('b')];
    send(a, 'a1');
    send(b, 'b1');
    await settle();
    await statements[0]?.answer([new FencedOff('rig'), 4]);
    expect(told).toEqual(['a fenced', 'b1=4']);
  });

  it('takes no more than may wait, and again once something has gone', async () => {
    const { statements, appender, send } = open(100);
    const a = appender('a');
    expect(send(a, 'a1', 60)).toBe(true);
    expect(send(a, 'a2', 60)).toBe(false);
    await settle();
    expect(send(a, 'a3', 60)).toBe(true);
    await statements[0]?.answer([1]);
    expect(send(a, 'a4', 90)).toBe(true);
  });

  it('counts a statement that never ends as failed, and goes on with the next', async () => {
    const { clock, told, batches, appender, send } = open();
    const [a, b] = [appender('a'), appender('b')];
    send(a, 'a1');
    await settle();
    send(b, 'b1');
    clock.advance(30_000);
    await settle();
    expect(told).toEqual(['a store']);
    expect(batches()).toEqual([1, 1]);
  });

  it('starts a rig again that trips over its own updates, and tells the others', async () => {
    const { statements, told, appender, send } = open();
    const bad = {
      ...appender('bad'),
      committed: () => {
        throw new Error('a bug');
      },
    };
    const b = appender('b');
    send(bad, 'x');
    send(b, 'b1');
    await settle();
    await statements[0]?.answer([1, 1]);
    expect(told).toEqual(['bad store', 'b1=1']);
  });
});
