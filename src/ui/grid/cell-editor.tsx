import { useState } from 'react';
import { COLUMN_WORDS } from '#words/sheet.ts';
import type { RowView } from '../live/row-views.ts';
import { CellLine } from './cell-line.tsx';
import { isWritable } from './plans/write-cells.ts';
import type { Editing, Sheet } from './sheet.ts';
import { closeCell, leaveCell } from './sheet-actions.ts';
import { knownValues, suggest } from './suggestions.ts';
import { useSheet } from './use-sheet.ts';

export interface CellEditorProps {
  readonly sheet: Sheet;
  readonly row: RowView;
}

/** The open cell: a text field with the values that are in use already, one arrow away. */
export function CellEditor({ sheet, row }: CellEditorProps) {
  const editing = useSheet(sheet, (state) => state.editing);
  if (editing === undefined) return null;
  const { cell } = editing;
  return <OpenCell key={`${cell.row} ${cell.column}`} sheet={sheet} row={row} editing={editing} />;
}

function OpenCell({ sheet, row, editing }: CellEditorProps & { readonly editing: Editing }) {
  const column = editing.cell.column;
  // Gathered once: others may edit while one types, and a list that changes under the hand helps nobody.
  const [known] = useState(() => (isWritable(column) ? knownValues(sheet.store.rig(), row.fixture, column) : []));
  return (
    <CellLine
      label={COLUMN_WORDS[column].name}
      text={editing.text}
      how={editing.how}
      offered={suggest(known, editing.text)}
      onWrite={(text) => sheet.set({ editing: { ...editing, text } })}
      onClose={(scope, onward) => closeCell(sheet, scope, onward)}
      onLeave={() => leaveCell(sheet)}
    />
  );
}
