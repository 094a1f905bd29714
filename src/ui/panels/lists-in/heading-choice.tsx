import type { Grid } from '#engine/list/grid.ts';
import type { Layout } from '#engine/list/layout.ts';
import { LISTS_IN_WORDS } from '#words/lists-in.ts';
import { Select } from '../../kit/select.tsx';
import type { LayoutChoice } from './use-layout.ts';

// Headings stand near the top: titles and a few blank lines come before them, not a whole list.
const OFFERED = 40;

export interface HeadingChoiceProps {
  readonly grid: Grid;
  readonly choice: LayoutChoice;
}

const BLANKS = (['blank', 'as-above'] as const).map((value) => ({
  value,
  label: LISTS_IN_WORDS.blankPositions[value],
}));

/** Where the headings stand, and what a line without a position means. */
export function HeadingChoice({ grid, choice }: HeadingChoiceProps) {
  const { layout, setHeadingRow, setBlankPosition } = choice;
  const rows = grid.rows.slice(0, Math.max(OFFERED, (layout.headingRow ?? 0) + 1)).flatMap((row, index) => {
    const text = row.cells.map((cell) => cell.trim()).filter(Boolean);
    return text.length === 0
      ? []
      : [{ value: String(index), label: LISTS_IN_WORDS.lineText(row.line, text.join(' | ').slice(0, 80)) }];
  });
  return (
    <div className="grid gap-4 sm:grid-cols-2">
      <Select
        label={LISTS_IN_WORDS.headingRow}
        choices={[...rows, { value: 'none', label: LISTS_IN_WORDS.noHeadingRow }]}
        value={layout.headingRow === null ? 'none' : String(layout.headingRow)}
        onChoose={(value) => setHeadingRow(value === 'none' ? null : Number(value))}
      />
      {hasPosition(layout) ? (
        <Select
          label={LISTS_IN_WORDS.blankPosition}
          choices={BLANKS}
          value={layout.blankPosition}
          onChoose={setBlankPosition}
        />
      ) : null}
    </div>
  );
}

const hasPosition = (layout: Layout) =>
  layout.form === 'theirs' && layout.columns.some((column) => column.meaning === 'position');
