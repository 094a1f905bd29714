import type { FixtureType, Part, TypeMode } from '../model/fixture-type.ts';
import { type CellRun, cellRunOf } from './cell-runs.ts';
import { cellText, oneLine } from './cell-text.ts';
import type { DraftEdit, DraftRepeat, DraftRow } from './draft.ts';
import { newRepeatEdits, newRowEdits } from './new-row.ts';
import { type ChannelPlace, type PlacedChannel, placeChannels } from './place-channels.ts';
import { type LostInRow, rowOfChannel } from './row-of-channel.ts';
import { slotsText } from './slots-text.ts';

/** What a chart has no place for, counted; 0 throughout when opening it loses nothing. */
export interface LostInChart {
  /** Functions that work only while another channel stands somewhere: at most those of one condition stay, without it. */
  readonly conditions: number;
  /** Functions and ranges with physical values. */
  readonly physical: number;
  /** Uses of a channel beside its first. */
  readonly uses: number;
  /** Functions and ranges that do not start on an 8 bit step, or are too many for a cell. */
  readonly fine: number;
  /** Channels whose snap or master is not the usual one. */
  readonly settings: number;
  /** Channels that take no slot of the mode, or are too many for a chart. */
  readonly channels: number;
}

/**
 * The edits that turn a mode that is kept into a chart of its own, under the id it has in its draft. Cells that follow each
 * other at one distance become a repeat, others rows of parts. Its slots stay what they are.
 */
export function openChart(
  modeId: string,
  mode: TypeMode,
  type: FixtureType,
  ids: () => string,
): { readonly edits: readonly DraftEdit[]; readonly lost: LostInChart } {
  const placed = placeChannels(type, mode);
  const tops = topsOf(type.parts);
  const rows: NewRow[] = [];
  const repeats: DraftRepeat[] = [];
  for (const group of cellGroups(placed)) {
    const run = (group[0]?.places.length ?? 0) < 2 ? undefined : cellRunOf(group);
    if (run === undefined) rows.push(...group.flatMap((each) => rowsApart(each, mode)));
    else {
      const repeat = repeatOf(run, tops, ids());
      repeats.push(repeat);
      rows.push(...rowsOfRun(run, tops, repeat.id));
    }
  }
  const sorted = rows.sort(byPlace).slice(0, ROW_LIMIT);
  const shown = new Set(sorted.map((row) => row.placed));
  const used = new Set(sorted.map((row) => row.cells.repeat));
  return {
    edits: [
      { of: 'mode', mode: modeId, field: 'kept', value: null },
      ...repeats.filter(({ id }) => used.has(id)).flatMap((repeat) => newRepeatEdits(modeId, repeat)),
      ...sorted.flatMap(({ cells }, at) => newRowEdits(modeId, { ...cells, id: ids(), order: at + 1 })),
    ],
    lost: {
      ...sumOf([...shown].map((each) => rowOfChannel(each.channel).lost)),
      channels: mode.channels.length - shown.size,
    },
  };
}

/** Rows of a chart, at most: with a repeat for each, their cells are still one call's edits. */
const ROW_LIMIT = 1500;

interface NewRow {
  readonly placed: PlacedChannel;
  readonly first: ChannelPlace;
  readonly cells: Partial<DraftRow>;
}

/** Channels together that stand in the same cells. */
function cellGroups(placed: readonly PlacedChannel[]): readonly (readonly PlacedChannel[])[] {
  const groups = new Map<string, PlacedChannel[]>();
  for (const each of placed) {
    const key = JSON.stringify(each.places.map((place) => place.cell));
    const known = groups.get(key);
    if (known === undefined) groups.set(key, [each]);
    else known.push(each);
  }
  return [...groups.values()];
}

/** By slot; virtual ones last. */
const byPlace = (a: NewRow, b: NewRow) =>
  a.first.break - b.first.break || (a.first.slots[0] ?? LAST) - (b.first.slots[0] ?? LAST);
const LAST = Number.MAX_SAFE_INTEGER;

/** A row for every place, told apart by part. */
function rowsApart(placed: PlacedChannel, mode: TypeMode): NewRow[] {
  const { row } = rowOfChannel(placed.channel);
  const own = placed.channel.part === mode.root ? '' : placed.channel.part;
  return placed.places.map((first) => {
    const part = first.cell === '' ? own : `${first.cell} ${own}`;
    return { placed, first, cells: { ...row, ...placeCells(first), part: cellText(oneLine(part)) } };
  });
}

function rowsOfRun({ channels }: CellRun, tops: ReadonlyMap<string, string>, repeat: string): NewRow[] {
  return channels.map(({ placed, first }) => {
    const { part } = placed.channel;
    const own = tops.get(part) === part ? '' : cellText(oneLine(part));
    return { placed, first, cells: { ...rowOfChannel(placed.channel).row, ...placeCells(first), part: own, repeat } };
  });
}

const placeCells = (place: ChannelPlace) => ({
  slots: slotsText(place.slots),
  break: place.break === 1 ? '' : String(place.break),
});

function repeatOf({ count, step, channels }: CellRun, tops: ReadonlyMap<string, string>, id: string): DraftRepeat {
  const name = tops.get(channels[0]?.placed.channel.part ?? '') ?? '';
  return { id, name: cellText(oneLine(name)), count: String(count), step: step === null ? '' : String(step) };
}

/** The part at the top that each part is within. */
function topsOf(parts: readonly Part[]): ReadonlyMap<string, string> {
  const tops = new Map<string, string>();
  for (const { name, within } of parts) tops.set(name, within === null ? name : (tops.get(within) ?? name));
  return tops;
}

const NOTHING_LOST: LostInRow = { conditions: 0, physical: 0, uses: 0, fine: 0, settings: 0 };

function sumOf(rows: readonly LostInRow[]): LostInRow {
  return rows.reduce(
    (sum, row) => ({
      conditions: sum.conditions + row.conditions,
      physical: sum.physical + row.physical,
      uses: sum.uses + row.uses,
      fine: sum.fine + row.fine,
      settings: sum.settings + row.settings,
    }),
    NOTHING_LOST,
  );
}
