import type { ChartMode, ChartReading, ChartRepeat, ChartRow } from '#engine/draft/chart-reading.ts';
import { GUESS_WORDS, LEFT_OUT_WORDS, sayChartRemark, sayRepeat } from '#words/charts.ts';
import { PASTE_WORDS } from '#words/draft-screen.ts';
import { Mark } from '../../kit/mark.tsx';
import { type Column, Table } from '../../kit/table.tsx';

export interface PastePreviewProps {
  readonly chart: ChartReading;
  readonly repeats: ReadonlySet<ChartRepeat>;
  readonly onRepeats: (repeats: ReadonlySet<ChartRepeat>) => void;
}

/** Rows and lines of a list that are shown. */
const MOST = 60;

/** What a pasted chart becomes: its rows with how sure each attribute is, what to check, and the lines left out. */
export function PastePreview({ chart, repeats, onRepeats }: PastePreviewProps) {
  const leftOut = chart.lines.flatMap(({ line, text, became }) =>
    became.kind === 'left-out' ? [{ line, text, reason: became.reason }] : [],
  );
  return (
    <div className="flex flex-col gap-3">
      {chart.modes.map((mode, at) => (
        <section key={keyOfMode(chart, mode)}>
          {chart.modes.length === 1 && mode.name === '' ? null : (
            <h3 className="text-large">{PASTE_WORDS.mode(mode.name, at + 1)}</h3>
          )}
          <Repeats mode={mode} repeats={repeats} onRepeats={onRepeats} />
          <Remarks mode={mode} />
          <Table
            caption={PASTE_WORDS.mode(mode.name, at + 1)}
            columns={COLUMNS}
            rows={mode.rows.slice(0, MOST)}
            keyOf={(row) => String(mode.rows.indexOf(row))}
            rowName="slots"
          />
          {mode.rows.length > MOST ? <p className="text-soft">{PASTE_WORDS.more(mode.rows.length - MOST)}</p> : null}
        </section>
      ))}
      {leftOut.length === 0 ? null : (
        <section>
          <h3 className="text-large">{PASTE_WORDS.leftOut(leftOut.length)}</h3>
          <ul>
            {leftOut.slice(0, MOST).map(({ line, text, reason }) => (
              <li key={line} className="border-b border-rule py-0.5">
                <span className="text-soft">{PASTE_WORDS.line(line)}</span> “{text.trim().slice(0, 90)}”{' '}
                <span className="text-soft">{LEFT_OUT_WORDS[reason]}</span>
              </li>
            ))}
          </ul>
          {leftOut.length > MOST ? <p className="text-soft">{PASTE_WORDS.moreLines(leftOut.length - MOST)}</p> : null}
        </section>
      )}
    </div>
  );
}

const keyOfMode = (chart: ChartReading, mode: ChartMode) => `${chart.modes.indexOf(mode)} ${mode.name}`;

const COLUMNS: readonly Column<ChartRow>[] = [
  {
    key: 'slots',
    heading: PASTE_WORDS.slots,
    cell: (row) => <span className="font-mono">{row.slots}</span>,
  },
  { key: 'name', heading: PASTE_WORDS.name, cell: (row) => row.name },
  { key: 'attribute', heading: PASTE_WORDS.attribute, cell: (row) => <Guess row={row} /> },
  {
    key: 'ranges',
    heading: PASTE_WORDS.ranges,
    wideOnly: true,
    cell: (row) => <span className="text-soft">{row.ranges.split('\n').slice(0, 3).join(' · ')}</span>,
  },
];

function Guess({ row }: { readonly row: ChartRow }) {
  return (
    <>
      {row.guess === 'stated' || row.guess === 'sure' ? null : (
        <Mark severity={row.guess === 'likely' ? 'note' : 'caution'} className="mr-1" />
      )}
      {row.attribute} <span className="text-soft">{GUESS_WORDS[row.guess]}</span>
    </>
  );
}

function Repeats({ mode, repeats, onRepeats }: Omit<PastePreviewProps, 'chart'> & { readonly mode: ChartMode }) {
  if (mode.repeats.length === 0) return null;
  const tick = (repeat: ChartRepeat, ticked: boolean) => {
    const next = new Set(repeats);
    if (ticked) next.add(repeat);
    else next.delete(repeat);
    onRepeats(next);
  };
  return (
    <fieldset className="py-1">
      <legend className="font-medium">{PASTE_WORDS.repeats}</legend>
      {mode.repeats.map((repeat) => (
        <label key={repeat.firstRow} className="flex min-h-control items-center gap-2">
          <input
            type="checkbox"
            checked={repeats.has(repeat)}
            onChange={(event) => tick(repeat, event.currentTarget.checked)}
          />
          {sayRepeat(repeat)}
        </label>
      ))}
    </fieldset>
  );
}

function Remarks({ mode }: { readonly mode: ChartMode }) {
  if (mode.remarks.length === 0) return null;
  return (
    <div className="py-1">
      <h4 className="font-medium">{PASTE_WORDS.remarks}</h4>
      <ul>
        {mode.remarks.slice(0, MOST).map((remark) => (
          <li key={`${remark.code} ${remark.row} ${remark.text}`} className="flex gap-1">
            <Mark severity="caution" />
            <span>
              {remark.row === null ? '' : `${mode.rows[remark.row]?.slots} ${mode.rows[remark.row]?.name}: `}
              {sayChartRemark(remark)}
            </span>
          </li>
        ))}
      </ul>
    </div>
  );
}
