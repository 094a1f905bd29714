import { COLUMN_WORDS, COLUMNS_WORDS } from '#words/sheet.ts';
import { DEFAULT_COLUMNS, moveColumn, putColumn, resizeColumn, widthOf } from '../../grid/column-settings.ts';
import type { Sheet } from '../../grid/sheet.ts';
import { useSheet } from '../../grid/use-sheet.ts';
import { Button } from '../../kit/button.tsx';
import { LinkButton } from '../../kit/link-button.tsx';
import type { ColumnId } from '../../live/rows/column.ts';
import { Panel } from '../panel.tsx';

export interface ColumnsPanelProps {
  readonly sheet: Sheet;
  readonly onClose: () => void;
}

const STEP = 16;

/** Which columns are shown, in which order and how wide. */
export function ColumnsPanel({ sheet, onClose }: ColumnsPanelProps) {
  const settings = useSheet(sheet, (state) => state.settings);
  return (
    <Panel title={COLUMNS_WORDS.title} about={COLUMNS_WORDS.about} onClose={onClose}>
      <ul className="flex flex-col">
        {settings.order.map((column) => (
          <ColumnLine key={column} sheet={sheet} column={column} />
        ))}
      </ul>
      <LinkButton onClick={() => sheet.setColumns(DEFAULT_COLUMNS)}>{COLUMNS_WORDS.reset}</LinkButton>
    </Panel>
  );
}

function ColumnLine({ sheet, column }: { readonly sheet: Sheet; readonly column: ColumnId }) {
  const { settings, columns } = sheet.state();
  const { name } = COLUMN_WORDS[column];
  const move = (step: 1 | -1) => sheet.setColumns(moveColumn(settings, settings.order, column, step));
  const size = (step: 1 | -1) =>
    sheet.setColumns(resizeColumn(settings, column, widthOf(settings, column) + step * STEP));
  return (
    <li className="flex min-h-control items-center gap-1 border-b border-rule">
      <label className="flex flex-1 items-center gap-2">
        <input
          type="checkbox"
          className="size-4 accent-ink"
          checked={columns.includes(column)}
          onChange={(event) =>
            sheet.setColumns(putColumn(settings, column, event.currentTarget.checked ? 'shown' : 'hidden'))
          }
        />
        {name}
      </label>
      <Button aria-label={COLUMNS_WORDS.up(name)} onClick={() => move(-1)}>
        ←
      </Button>
      <Button aria-label={COLUMNS_WORDS.down(name)} onClick={() => move(1)}>
        →
      </Button>
      <Button aria-label={COLUMNS_WORDS.narrower(name)} onClick={() => size(-1)}>
        −
      </Button>
      <Button aria-label={COLUMNS_WORDS.wider(name)} onClick={() => size(1)}>
        +
      </Button>
    </li>
  );
}
