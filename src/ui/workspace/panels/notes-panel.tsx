import { useSyncExternalStore } from 'react';
import { rowsOf } from '#base/table.ts';
import { noteId } from '#engine/model/ids.ts';
import type { Note } from '#engine/model/rig.ts';
import { NOTES_WORDS } from '#words/sheet.ts';
import type { Sheet } from '../../grid/sheet.ts';
import { carryOut } from '../../grid/sheet-actions.ts';
import { Button } from '../../kit/button.tsx';
import { LineField } from '../../kit/line-field.tsx';
import { LinkButton } from '../../kit/link-button.tsx';
import { Panel } from '../panel.tsx';

export interface NotesPanelProps {
  readonly sheet: Sheet;
  readonly onClose: () => void;
}

/** What the crew notes of the rig as a whole. */
export function NotesPanel({ sheet, onClose }: NotesPanelProps) {
  const { store } = sheet;
  const table = useSyncExternalStore(store.subscribe, () => store.rig().notes);
  const notes = [...rowsOf(table)].sort((a, b) => a.order - b.order || (a.id < b.id ? -1 : 1));
  const write = ({ id, order }: Note, text: string) =>
    carryOut(sheet, { name: 'set-note', edits: [{ kind: 'set-note', note: id, text, order }] });
  const add = () => {
    const order = (notes.at(-1)?.order ?? 0) + 1;
    carryOut(sheet, { name: 'set-note', edits: [{ kind: 'set-note', note: noteId(sheet.makeId()), text: '', order }] });
  };
  const remove = ({ id }: Note) => carryOut(sheet, { name: 'set-note', edits: [{ kind: 'remove-note', note: id }] });
  const frozen = !store.canEdit();
  return (
    <Panel title={NOTES_WORDS.title} about={NOTES_WORDS.about} onClose={onClose}>
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
            <LinkButton aria-label={NOTES_WORDS.remove(n + 1)} disabled={frozen} onClick={() => remove(note)}>
              {NOTES_WORDS.removeWord}
            </LinkButton>
          </li>
        ))}
      </ol>
      <div>
        <Button onClick={add} disabled={frozen}>
          {NOTES_WORDS.add}
        </Button>
      </div>
    </Panel>
  );
}
