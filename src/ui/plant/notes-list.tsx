import { useSyncExternalStore } from 'react';
import { rowsOf } from '#base/table.ts';
import type { Plan } from '#engine/model/edit.ts';
import type { Note } from '#engine/model/rig.ts';
import { NOTES_WORDS } from '#words/sheet.ts';
import { LineField } from '../kit/line-field.tsx';
import { LinkButton } from '../kit/link-button.tsx';
import type { RigStore } from '../live/rig-store.ts';

export interface NotesListProps {
  readonly store: RigStore;
  readonly onPlan: (plan: Plan) => void;
}

/** The notes of a rig in their order, each to be written or taken away. */
export function NotesList({ store, onPlan }: NotesListProps) {
  const table = useSyncExternalStore(store.subscribe, () => store.rig().notes);
  const frozen = !useSyncExternalStore(store.subscribeLink, store.canEdit);
  const notes = notesInOrder(table);
  const write = ({ id, order }: Note, text: string) =>
    onPlan({ name: 'set-note', edits: [{ kind: 'set-note', note: id, text, order }] });
  const remove = ({ id }: Note) => onPlan({ name: 'set-note', edits: [{ kind: 'remove-note', note: id }] });
  return (
    <>
      {notes.length === 0 ? <p>{NOTES_WORDS.none}</p> : null}
      <ol className="flex flex-col gap-2">
        {notes.map((note, n) => (
          <li key={note.id} className="flex items-center gap-3">
            <LineField
              name={NOTES_WORDS.note(n + 1)}
              value={note.text}
              disabled={frozen}
              onWrite={(text) => write(note, text)}
            />
            {frozen ? null : (
              <LinkButton aria-label={NOTES_WORDS.remove(n + 1)} onClick={() => remove(note)}>
                {NOTES_WORDS.removeWord}
              </LinkButton>
            )}
          </li>
        ))}
      </ol>
    </>
  );
}

/** Notes as they stand below each other. */
const notesInOrder = (table: Parameters<typeof rowsOf<Note>>[0]): readonly Note[] =>
  [...rowsOf(table)].sort((a, b) => a.order - b.order || (a.id < b.id ? -1 : 1));

/** The plan that adds a note below the others. */
export function addNote(store: RigStore, id: Note['id'], text: string): Plan {
  const order = (notesInOrder(store.rig().notes).at(-1)?.order ?? 0) + 1;
  return { name: 'set-note', edits: [{ kind: 'set-note', note: id, text, order }] };
}
