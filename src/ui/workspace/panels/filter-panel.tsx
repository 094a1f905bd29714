import { COLUMN_WORDS, FILTER_WORDS } from '#words/sheet.ts';
import { COLUMNS } from '../../grid/column-settings.ts';
import type { Sheet } from '../../grid/sheet.ts';
import { useSheet } from '../../grid/use-sheet.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import { Select } from '../../kit/select.tsx';
import { TextField } from '../../kit/text-field.tsx';
import type { ColumnId } from '../../live/rows/column.ts';
import { EVERYTHING, type Filter, isFiltered } from '../../live/rows/view.ts';
import { Panel } from '../panel.tsx';

export interface FilterPanelProps {
  readonly sheet: Sheet;
  readonly onClose: () => void;
}

const CHOICES: readonly { readonly value: ColumnId | 'any'; readonly label: string }[] = [
  { value: 'any', label: FILTER_WORDS.any },
  ...COLUMNS.map((column) => ({ value: column, label: COLUMN_WORDS[column].name })),
];

/** Which rows are shown: those that hold a text, those with findings, or both. */
export function FilterPanel({ sheet, onClose }: FilterPanelProps) {
  const view = useSheet(sheet, (state) => state.view);
  const rows = useSheet(sheet, (state) => state.layout.rowCount);
  const change = (part: Partial<Filter>) => sheet.setView({ ...view, filter: { ...view.filter, ...part } });
  return (
    <Panel title={FILTER_WORDS.title} onClose={onClose}>
      <TextField label={FILTER_WORDS.label} value={view.filter.text} onText={(text) => change({ text })} />
      <Select
        label={FILTER_WORDS.column}
        choices={CHOICES}
        value={view.filter.column}
        onChoose={(column) => change({ column })}
      />
      <label className="flex min-h-control items-center gap-2">
        <input
          type="checkbox"
          className="size-4 accent-ink"
          checked={view.filter.flagged}
          onChange={(event) => change({ flagged: event.currentTarget.checked })}
        />
        {FILTER_WORDS.flagged}
      </label>
      <p role="status" className="text-soft">
        {FILTER_WORDS.shown(rows, sheet.store.rig().fixtures.size)}
      </p>
      {isFiltered(view.filter) ? (
        <LinkButton onClick={() => change(EVERYTHING)}>{FILTER_WORDS.clear}</LinkButton>
      ) : null}
    </Panel>
  );
}
