import type { ChartMode, ChartReading, ChartRepeat, ChartRow } from '#engine/draft/chart-reading.ts';
import type { Draft, DraftEdit, DraftMode } from '#engine/draft/draft.ts';
import { addRows, modeOf, type PartialRow, removeRows } from '#engine/draft/draft-plans.ts';
import { asGuess } from '#engine/draft/guess.ts';
import { addMode } from '#engine/draft/mode-plans.ts';
import { newRepeatEdits } from '#engine/draft/new-row.ts';
import { readSlots } from '#engine/draft/slots-text.ts';
import { foldName } from '#engine/model/ids.ts';
import { DRAFT_SCREEN_WORDS } from '#words/draft-screen.ts';

/** What a person chose of a pasted chart. */
export interface PasteChoice {
  /** The mode that is before them; undefined in a draft without modes. */
  readonly mode: string | undefined;
  /** What becomes of rows that this mode has already. */
  readonly rows: 'below' | 'instead';
  /** Repeats that are taken as such. */
  readonly repeats: ReadonlySet<ChartRepeat>;
}

export interface PasteEdits {
  readonly edits: readonly DraftEdit[];
  /** The mode the first chart went into. */
  readonly mode: string;
  readonly rows: number;
  readonly guesses: number;
}

/**
 * The edits that take a pasted chart in as one step: a single mode into the mode that is open, several each as a mode of
 * its own, the first into the open one when that is empty.
 */
export function pasteEdits(draft: Draft, reading: ChartReading, choice: PasteChoice, ids: () => string): PasteEdits {
  const several = reading.modes.length > 1;
  const open = openMode(draft, choice, several);
  const taken = new Set(draft.modes.filter((mode) => mode.id !== open?.id).map((mode) => foldName(mode.name)));
  const last = Math.max(0, ...draft.modes.map((mode) => mode.order));
  const targets = reading.modes.map((chart, at): Target => {
    const name = freeName(chart.name || DRAFT_SCREEN_WORDS.pastedMode(lastSlot(chart)), taken);
    return at === 0 && open !== undefined
      ? { chart, name, mode: open.id, open }
      : { chart, name, mode: ids(), order: last + at + 1 };
  });
  const rows = reading.modes.flatMap((chart) => keptRows(chart, choice.repeats));
  return {
    edits: targets.flatMap((target) => [...modeEdits(draft, target), ...chartEdits(draft, target, choice, ids)]),
    mode: targets[0]?.mode ?? '',
    rows: rows.length,
    guesses: rows.filter(({ row }) => isGuessed(row)).length,
  };
}

/** The highest slot that a chart names. */
const lastSlot = ({ rows }: ChartMode) => Math.max(0, ...rows.flatMap((row) => readSlots(row.slots) ?? []));

/** A name that no mode has yet. */
function freeName(name: string, taken: Set<string>): string {
  const names = [name, ...Array.from({ length: taken.size }, (_, at) => `${name} (${at + 2})`)];
  const free = names.find((each) => !taken.has(foldName(each))) ?? name;
  taken.add(foldName(free));
  return free;
}

/** Where a chart of the reading goes: into the open mode, or a new one. */
type Target = { readonly chart: ChartMode; readonly name: string; readonly mode: string } & (
  | { readonly open: DraftMode }
  | { readonly open?: never; readonly order: number }
);

/** The mode before the person, when the first chart goes into it. */
function openMode(draft: Draft, { mode }: PasteChoice, several: boolean): DraftMode | undefined {
  const open = mode === undefined ? undefined : modeOf(draft, mode);
  if (open === undefined || open.kept !== '') return undefined;
  return several && open.rows.length > 0 ? undefined : open;
}

function modeEdits(draft: Draft, target: Target): readonly DraftEdit[] {
  const { mode, name, open } = target;
  if (open === undefined) return addMode(draft, name, () => mode).map((edit) => withOrder(edit, target.order));
  return isUnnamed(open) ? [{ of: 'mode', mode, field: 'name', value: name }] : [];
}

const withOrder = (edit: DraftEdit, order: number): DraftEdit =>
  edit.of === 'mode' && edit.field === 'order' ? { ...edit, value: order } : edit;

const isUnnamed = ({ name }: DraftMode) => name === '' || name.startsWith(DRAFT_SCREEN_WORDS.newMode);

function chartEdits(draft: Draft, { chart, mode, open }: Target, choice: PasteChoice, ids: () => string): DraftEdit[] {
  const repeats = new Map(chart.repeats.filter((each) => choice.repeats.has(each)).map((each) => [each, ids()]));
  const rows = keptRows(chart, choice.repeats).map(({ row, repeat }) =>
    partialRow(row, repeat && { id: repeats.get(repeat) ?? '', part: cellName(chart, repeat).part }),
  );
  const there = open?.rows.map((row) => row.id) ?? [];
  // A mode that is only now being made is empty.
  const ground = open === undefined ? { ...draft, modes: [{ ...NEW_MODE, id: mode }] } : draft;
  return [
    ...(choice.rows === 'instead' ? removeRows(draft, mode, there) : []),
    ...[...repeats].flatMap(([repeat, id]) => {
      const { name } = cellName(chart, repeat);
      return newRepeatEdits(mode, { id, name, count: String(repeat.count), step: String(repeat.step) });
    }),
    ...addRows(ground, mode, there.at(-1) ?? null, rows, ids),
  ];
}

/** What the rows of the first cell call it: `Pixel 1` is a cell called Pixel, and no part within one. */
function cellName(chart: ChartMode, { firstRow, rows }: ChartRepeat): { readonly name: string; readonly part: string } {
  const parts = new Set(chart.rows.slice(firstRow, firstRow + rows).map((row) => row.part));
  const [, name] = parts.size === 1 ? (/^(.*\S)\s*1$/.exec([...parts][0] ?? '') ?? []) : [];
  return name === undefined ? { name: '', part: '' } : { name, part: [...parts][0] ?? '' };
}

const NEW_MODE = { order: 0, name: '', description: '', firmware: '', kept: '', rows: [], repeats: [] } as const;

/** The rows that go into the chart: of a repeat that is taken as such, those of its first cell. */
function keptRows(chart: ChartMode, taken: ReadonlySet<ChartRepeat>) {
  return chart.rows.flatMap((row, at): { readonly row: ChartRow; readonly repeat: ChartRepeat | undefined }[] => {
    const repeat = chart.repeats.find(
      (each) => taken.has(each) && at >= each.firstRow && at < each.firstRow + each.rows * each.count,
    );
    return repeat !== undefined && at >= repeat.firstRow + repeat.rows ? [] : [{ row, repeat }];
  });
}

const isGuessed = (row: ChartRow) => row.guess !== 'stated' && row.attribute !== '';

function partialRow(row: ChartRow, repeat: { readonly id: string; readonly part: string } | undefined): PartialRow {
  const { slots, name, attribute, default: first, highlight, ranges } = row;
  const part = repeat !== undefined && row.part === repeat.part ? '' : row.part;
  const cells = { slots, break: row.break, name, part, default: first, highlight, ranges, repeat: repeat?.id ?? '' };
  return { ...cells, attribute: isGuessed(row) ? asGuess(attribute) : attribute };
}
