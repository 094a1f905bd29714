import { useSyncExternalStore } from 'react';
import { PEOPLE_WORDS } from '#words/sheet.ts';
import { personLook } from '../grid/person-looks.ts';
import type { PersonHere } from '../live/link.ts';
import type { RigStore } from '../live/rig-store.ts';

/** People named here before the rest is counted. */
const NAMED = 6;

/** Who else has this rig or draft open, each person once. */
export function PeopleHere({ store }: { readonly store: Pick<RigStore, 'people' | 'subscribeLink'> }) {
  const people = onePerPerson(useSyncExternalStore(store.subscribeLink, store.people));
  if (people.length === 0) return null;
  return (
    <ul aria-label={PEOPLE_WORDS.here} className="flex flex-wrap items-center gap-x-4">
      {people.slice(0, NAMED).map((person) => (
        <li key={person.id} className="flex items-center gap-1.5">
          <span aria-hidden="true" className={`size-2.5 rounded-[2px] ${personLook(person.colour).ground}`} />
          {person.name}
        </li>
      ))}
      {people.length > NAMED ? <li className="text-soft">{PEOPLE_WORDS.more(people.length - NAMED)}</li> : null}
    </ul>
  );
}

/** Two windows of one person have one colour and one name. */
function onePerPerson(people: readonly PersonHere[]): readonly PersonHere[] {
  const seen = new Map<string, PersonHere>();
  for (const person of people)
    if (!seen.has(`${person.colour} ${person.name}`)) seen.set(`${person.colour} ${person.name}`, person);
  return [...seen.values()];
}
