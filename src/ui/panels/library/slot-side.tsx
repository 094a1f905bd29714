import type { ChartUse } from '#engine/type/type-chart.ts';
import { COMPARE_WORDS } from '#words/library.ts';
import { CHART_WORDS, partText, slotUseText } from '#words/type-chart.ts';
import { RangeList } from './range-list.tsx';

export interface SlotSideProps {
  /** What the slot does on this side; null where there is no such slot. */
  readonly uses: readonly ChartUse[] | null;
  readonly other: readonly ChartUse[] | null;
}

/** One side of a slot that changed. Its values are listed only where they are what changed, or part of it. */
export function SlotSide({ uses, other }: SlotSideProps) {
  if (uses === null) return <span className="text-soft">{COMPARE_WORDS.none}</span>;
  if (uses.length === 0) return <span className="text-soft">{CHART_WORDS.hole}</span>;
  const others = other ?? [];
  const values = textOf(uses.map(valuesOf)) !== textOf(others.map(valuesOf));
  const parts = !values && textOf(uses.map(slotUseText)) === textOf(others.map(slotUseText));
  return uses.map((use) => (
    <div key={JSON.stringify(use)} className="[overflow-wrap:anywhere]">
      {slotUseText(use)}
      {parts ? `, ${partText(use)}` : ''}
      {values ? <RangeList use={use} /> : null}
    </div>
  ));
}

const valuesOf = ({ ranges, rangeBytes }: ChartUse) => ({ ranges, rangeBytes });

const textOf = (values: readonly unknown[]) => JSON.stringify(values);
