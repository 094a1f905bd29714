import type { Clock } from '#base/clock.ts';
import type { Person, ServerMessage, Where } from '#wire/sync/message.ts';
import type { Pass } from './pass.ts';

/** Who is in a room. Changes are gathered and told together, at most about eight times a second, less often in a crowd. */
export interface People {
  enter(pass: Pass): Person;
  move(id: number, where: Where | null): void;
  leave(id: number): void;
  list(): Person[];
  stop(): void;
}

const LEAST_MS = 125;
/** Each telling costs a message to everybody: a crowd of 200 is told twice a second. */
const MS_PER_PERSON = 2.5;

export function createPeople(clock: Clock, tell: (news: ServerMessage) => void): People {
  const here = new Map<number, Person>();
  const arrived = new Set<number>();
  const moved = new Set<number>();
  const left = new Set<number>();
  let lastId = 0;
  let stopTimer: (() => void) | undefined;

  const flush = (): void => {
    stopTimer = undefined;
    const known = (ids: Set<number>) => [...ids].flatMap((id) => here.get(id) ?? []);
    const news = {
      kind: 'people',
      arrived: known(arrived),
      moved: known(moved).flatMap(({ id, where }) => (arrived.has(id) ? [] : { id, where })),
      left: [...left],
    } as const;
    for (const changes of [arrived, moved, left]) changes.clear();
    if (news.arrived.length + news.moved.length + news.left.length > 0) tell(news);
  };
  const changed = (changes: Set<number>, id: number): void => {
    changes.add(id);
    stopTimer ??= clock.after(Math.max(LEAST_MS, here.size * MS_PER_PERSON), flush);
  };

  return {
    enter({ user, name }) {
      const person = { id: ++lastId, user, name, colour: colourFor(user, here.values()), where: null };
      here.set(person.id, person);
      changed(arrived, person.id);
      return person;
    },
    move(id, where) {
      const person = here.get(id);
      if (!person || sameWhere(person.where, where)) return;
      here.set(id, { ...person, where });
      changed(moved, id);
    },
    leave(id) {
      if (here.delete(id)) changed(left, id);
    },
    list: () => [...here.values()],
    stop: () => stopTimer?.(),
  };
}

function sameWhere(a: Where | null, b: Where | null): boolean {
  return a?.fixture === b?.fixture && a?.field === b?.field && a?.at === b?.at;
}

/** The colour this person has already, or else the smallest one that nobody has. */
function colourFor(user: string, here: Iterable<Person>): number {
  const taken = new Set<number>();
  for (const person of here) {
    if (person.user === user) return person.colour;
    taken.add(person.colour);
  }
  let colour = 0;
  while (taken.has(colour)) colour += 1;
  return colour;
}
