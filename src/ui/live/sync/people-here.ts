import type { Person, ServerMessage } from '#wire/sync/message.ts';

/** Who is in the rig, as the server tells it. */
export interface PeopleHere {
  welcome(message: ServerMessage & { readonly kind: 'welcome' }): void;
  news(message: ServerMessage & { readonly kind: 'people' }): void;
  /** By number; the same array until somebody comes, moves or goes. */
  list(): readonly Person[];
  me(): number | undefined;
}

export function createPeopleHere(): PeopleHere {
  let here = new Map<number, Person>();
  let list: readonly Person[] = [];
  let me: number | undefined;
  const settle = () => {
    list = [...here.values()].sort((a, b) => a.id - b.id);
  };
  return {
    welcome(message) {
      here = new Map(message.people.map((person) => [person.id, person]));
      me = message.me;
      settle();
    },
    news({ arrived, moved, left }) {
      for (const person of arrived) here.set(person.id, person);
      for (const { id, where } of moved) {
        const person = here.get(id);
        if (person) here.set(id, { ...person, where });
      }
      for (const id of left) here.delete(id);
      settle();
    },
    list: () => list,
    me: () => me,
  };
}
