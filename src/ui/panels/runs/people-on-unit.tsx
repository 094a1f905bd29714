import type { FixtureId } from '#engine/model/ids.ts';
import { SHEET_WORDS } from '#words/sheet.ts';
import { personLook } from '../../grid/person-looks.ts';
import { useRow } from '../../grid/use-sheet.ts';
import type { RigStore } from '../../live/rig-store.ts';

/** The names of others who have chosen a unit, here or in the sheet. */
export function PeopleOnUnit({ store, id }: { readonly store: RigStore; readonly id: FixtureId }) {
  const people = useRow(store, id)?.people ?? [];
  return people.map(({ id: person, name, colour }) => (
    <span key={person} className={`mr-2 px-1 text-small text-person-ink ${personLook(colour).ground}`}>
      <span aria-hidden="true">{name}</span>
      <span className="sr-only">{SHEET_WORDS.here(name)}</span>
    </span>
  ));
}
