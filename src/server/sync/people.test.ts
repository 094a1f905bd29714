import { describe, expect, it } from 'vitest';
import { createFakeClock } from '#tests/support/fake-clock.ts';
import type { ServerMessage } from '#wire/sync/message.ts';
import { createPeople } from './people.ts';

function open() {
  const clock = createFakeClock();
  const told: ServerMessage[] = [];
  const people = createPeople(clock, (news) => told.push(news));
  const enter = (user: string) => people.enter({ user, name: user, role: 'writer' });
  return { clock, told, people, enter };
}

const at = (fixture: string) => ({ fixture, field: 'unit' });

describe('people in a room', () => {
  it('gives windows of one person one colour, and a free one to the next person', () => {
    const { people, enter } = open();
    const colours = ['ann', 'bob', 'ann', 'cy'].map((user) => enter(user).colour);
    expect(colours).toEqual([0, 1, 0, 2]);
    people.leave(2);
    expect(enter('dee').colour).toBe(1);
  });

  it('tells many changes as one, no more often than eight times a second', () => {
    const { clock, told, people, enter } = open();
    const { id } = enter('ann');
    for (let nth = 0; nth < 1000; nth++) {
      people.move(id, at(`f${nth}`));
      clock.advance(1);
    }
    clock.advance(200);
    expect(told.length).toBeLessThanOrEqual(9);
    expect(told.at(-1)).toEqual({ kind: 'people', arrived: [], moved: [{ id, where: at('f999') }], left: [] });
  });

  it('tells a crowd less often', () => {
    const { clock, told, people, enter } = open();
    const crowd = Array.from({ length: 200 }, (_, nth) => enter(`p${nth}`));
    for (let nth = 0; nth < 1000; nth++) {
      people.move(crowd[nth % 200]?.id ?? 0, at(`f${nth}`));
      clock.advance(1);
    }
    expect(told.length).toBeLessThanOrEqual(3);
  });

  it('says nothing of who came and went between two tellings but that they left, and nothing of a move to the same cell', () => {
    const { clock, told, people, enter } = open();
    const ann = enter('ann');
    people.move(ann.id, at('f1'));
    clock.advance(200);
    const bob = enter('bob');
    people.leave(bob.id);
    people.move(ann.id, at('f1'));
    clock.advance(200);
    expect(told).toEqual([
      { kind: 'people', arrived: [{ ...ann, where: at('f1') }], moved: [], left: [] },
      { kind: 'people', arrived: [], moved: [], left: [bob.id] },
    ]);
    expect(people.list()).toEqual([{ ...ann, where: at('f1') }]);
  });
});
