import { useQuery } from '@tanstack/react-query';
import { useMemo, useState } from 'react';
import type { Grid } from '#engine/list/grid.ts';
import type { Layout } from '#engine/list/layout.ts';
import type { Meaning } from '#engine/list/meaning.ts';
import { guessLayout, layoutWithHeading, withMeaning, withRemembered } from '#exchange/csv/guess-layout.ts';
import { mappingKey, readRemembered } from '#exchange/csv/mapping-memory.ts';
import { useTRPC } from '../../kit/data/trpc.tsx';

/** How a list is read, and the ways to say otherwise. */
export interface LayoutChoice {
  readonly layout: Layout;
  readonly setHeadingRow: (row: number | null) => void;
  readonly setMeaning: (column: number, meaning: Meaning) => void;
  readonly setBlankPosition: (blank: Layout['blankPosition']) => void;
}

/** The guess, bettered by what the crew said of such a list before, and by the person now. */
export function useLayout(grid: Grid, crewId: string): LayoutChoice {
  const trpc = useTRPC();
  const [changed, setChanged] = useState<Layout>();
  const guess = useMemo(() => guessLayout(grid), [grid]);
  const asked = useMemo(() => withLikelyHeadings(grid, guess), [grid, guess]);
  const key = mappingKey(asked);
  const recalled = useQuery(
    trpc.listMappings.recall.queryOptions(
      { crewId, key: key ?? '' },
      // Asked once for a list: columns that change by themselves under a person's hands would be worse than a guess.
      { enabled: key !== null, staleTime: Number.POSITIVE_INFINITY },
    ),
  ).data;
  const layout = changed ?? asRecalled(asked, recalled?.mapping) ?? guess;
  return {
    layout,
    setHeadingRow: (row) => setChanged(layoutWithHeading(grid, row)),
    setMeaning: (column, meaning) => setChanged(withMeaning(layout, column, meaning)),
    setBlankPosition: (blankPosition) => setChanged({ ...layout, blankPosition }),
  };
}

/** Headings in words nobody guesses: the first row of several cells may be one that the crew has settled before. */
function withLikelyHeadings(grid: Grid, guess: Layout): Layout {
  if (guess.headingRow !== null) return guess;
  const row = grid.rows.findIndex(({ cells }) => cells.filter((cell) => cell.trim() !== '').length > 1);
  return row < 0 ? guess : layoutWithHeading(grid, row);
}

/** Undefined when nothing is remembered of a list with these headings. */
function asRecalled(layout: Layout, mapping: unknown): Layout | undefined {
  const remembered = readRemembered(mapping);
  return remembered?.key === mappingKey(layout) && remembered ? withRemembered(layout, remembered) : undefined;
}
