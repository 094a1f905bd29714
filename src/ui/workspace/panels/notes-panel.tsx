import { noteId } from '#engine/model/ids.ts';
import { NOTES_WORDS } from '#words/sheet.ts';
import type { Sheet } from '../../grid/sheet.ts';
import { carryOut } from '../../grid/sheet-actions.ts';
import { Button } from '../../kit/button.tsx';
import { addNote, NotesList } from '../../plant/notes-list.tsx';
import { Panel } from '../panel.tsx';

export interface NotesPanelProps {
  readonly sheet: Sheet;
  readonly onClose: () => void;
}

/** What the crew notes of the rig as a whole. */
export function NotesPanel({ sheet, onClose }: NotesPanelProps) {
  const { store } = sheet;
  return (
    <Panel title={NOTES_WORDS.title} about={NOTES_WORDS.about} onClose={onClose}>
      <NotesList store={store} onPlan={(plan) => carryOut(sheet, plan)} />
      <div>
        <Button onClick={() => carryOut(sheet, addNote(store, noteId(sheet.makeId()), ''))} disabled={!store.canEdit()}>
          {NOTES_WORDS.add}
        </Button>
      </div>
    </Panel>
  );
}
