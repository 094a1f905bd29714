import { highest } from '#engine/type/dmx-value.ts';
import type { ChartUse } from '#engine/type/type-chart.ts';
import { CHART_WORDS, rangeText, toldRanges, valuesText } from '#words/type-chart.ts';

export type RangesOf = Pick<ChartUse, 'attribute' | 'ranges' | 'rangeBytes'>;

/** What the values of a slot mean, one stretch a line; nothing when they say no more than the slot does. */
export function RangeList({ use }: { readonly use: RangesOf }) {
  const ranges = toldRanges(use);
  if (ranges.length === 0) return null;
  return (
    <>
      {use.rangeBytes === 1 ? null : <p className="text-soft">{CHART_WORDS.outOf(highest(use.rangeBytes))}</p>}
      <ul>
        {ranges.map((range) => (
          <li key={JSON.stringify(range)} className="flex gap-3 max-sm:block">
            <span className="min-w-[4.5rem] shrink-0 text-right font-mono tabular-nums max-sm:mr-2">
              {valuesText(range)}
            </span>
            <span className="[overflow-wrap:anywhere]">{rangeText(range, use)}</span>
          </li>
        ))}
      </ul>
    </>
  );
}
