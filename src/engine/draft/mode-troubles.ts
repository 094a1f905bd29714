import { present } from '#base/assert.ts';
import { unreachable } from '#base/unreachable.ts';
import { SLOTS } from '../model/address.ts';
import type { FixtureType, TypeChannel, TypeMode } from '../model/fixture-type.ts';
import { foldName } from '../model/ids.ts';
import { type TypeTrouble, typeTroubles } from '../type/type-troubles.ts';
import { type LaidRow, lastSlotOf } from './chart-layout.ts';
import type { Draft, DraftMode } from './draft.ts';
import type { DraftTrouble } from './draft-trouble.ts';
import type { DraftedMode } from './drafted-mode.ts';

/** What is wrong with the modes of a draft, mode by mode; `modes` are what its modes amount to, in `type`. */
export function troublesOfModes(
  draft: Draft,
  type: FixtureType,
  modes: readonly DraftedMode[],
): readonly DraftTrouble[] {
  const found = troublesByMode(draft, type, modes);
  const all = draft.modes.flatMap((mode, at) => {
    const chart = present(modes[at], `no mode ${at}`);
    return [...nameTroubles(draft, mode), ...chart.troubles, ...placedTroubles(mode, chart, found.get(mode.id) ?? [])];
  });
  const where = { of: 'type' } as const;
  if (draft.modes.length === 0) return [{ where, kind: 'no-mode' }];
  const isUsable = (mode: DraftMode) => !(found.get(mode.id) ?? []).some((each) => UNUSABLE.has(each.kind));
  return draft.modes.some(isUsable) ? all : [{ where, kind: 'no-usable-mode' }, ...all];
}

const UNUSABLE: ReadonlySet<TypeTrouble['kind']> = new Set(['no-slots', 'only-virtual'] as const);

/** The troubles of the type by the ids of its modes, where channels of charts are named after the ids of their rows. */
function troublesByMode(
  draft: Draft,
  type: FixtureType,
  modes: readonly DraftedMode[],
): ReadonlyMap<string, readonly TypeTrouble[]> {
  const named = modes.map(({ mode, rows }, at): TypeMode => {
    const name = draft.modes[at]?.id ?? '';
    if (rows === null) return { ...mode, name };
    return {
      ...mode,
      name,
      channels: mode.channels.map((channel, place) => ({
        ...channel,
        uses: channel.uses.map((use) => ({ ...use, attribute: rows[place]?.row.id ?? '' })),
      })),
    };
  });
  const byMode = new Map<string, TypeTrouble[]>();
  for (const trouble of typeTroubles({ ...type, modes: named })) {
    const known = byMode.get(trouble.mode);
    if (known === undefined) byMode.set(trouble.mode, [trouble]);
    else known.push(trouble);
  }
  return byMode;
}

function nameTroubles({ modes }: Draft, { id, name }: DraftMode): DraftTrouble[] {
  const where = { of: 'mode', mode: id } as const;
  const folded = foldName(name);
  if (folded === '') return [{ where, kind: 'mode-unnamed' }];
  const first = modes.find((mode) => foldName(mode.name) === folded);
  return first?.id === id ? [] : [{ where, kind: 'mode-named-twice' }];
}

/** The troubles of one mode in the terms of the draft. */
function placedTroubles(mode: DraftMode, chart: DraftedMode, found: readonly TypeTrouble[]): readonly DraftTrouble[] {
  const where = { of: 'mode', mode: mode.id } as const;
  const { rows } = chart;
  if (rows === null) {
    return found.map((trouble) => ({ where, kind: 'kept-trouble', trouble: { ...trouble, mode: chart.mode.name } }));
  }
  const missing: DraftTrouble[] = mode.kept === '' ? [] : [{ where, kind: 'mode-kept-missing' }];
  const ids = new Map(chart.mode.channels.map((channel, at) => [nameOfRow(channel.part, rows[at]), rows[at]?.row.id]));
  const placed = withoutRepeats(found.flatMap((trouble) => chartTrouble(mode, trouble, ids, rows)));
  return [...missing, ...placed, ...rows.flatMap((row) => past512(mode, row)), ...alike(mode, chart, rows)];
}

/** Of several runs that the same rows take, as cells that lie over each other do, the first says it all. */
function withoutRepeats(troubles: readonly DraftTrouble[]): readonly DraftTrouble[] {
  const seen = new Set<string>();
  return troubles.filter((trouble) => {
    if (trouble.kind !== 'slot-taken-twice') return true;
    const key = JSON.stringify([trouble.break, trouble.rows]);
    return !seen.has(key) && seen.add(key);
  });
}

/** How `channelName` spells a channel that is named after its row. */
const nameOfRow = (part: string, row: LaidRow | undefined) => `${part}_${row?.row.id ?? ''}`;

function chartTrouble(
  { id, rows }: DraftMode,
  trouble: TypeTrouble,
  ids: ReadonlyMap<string, string | undefined>,
  laid: readonly LaidRow[],
): DraftTrouble[] {
  const hasSlots = laid.some((row) => row.slots.length > 0);
  const where = { of: 'mode', mode: id } as const;
  switch (trouble.kind) {
    case 'no-slots':
      // Slots too far out to be laid out are said of their row.
      return hasSlots ? [] : [{ where, kind: 'mode-without-slots' }];
    case 'only-virtual':
      return [{ where, kind: 'only-virtual', channels: ids.size }];
    case 'slot-taken-twice': {
      const taking = trouble.channels.flatMap((channel) => ids.get(channel) ?? []);
      const inOrder = rows.map((row) => row.id).filter((row) => taking.includes(row));
      const { break: number, first, last } = trouble;
      const place = { of: 'row', mode: id, row: inOrder.at(-1) ?? '', field: 'slots' } as const;
      return [{ where: place, kind: 'slot-taken-twice', break: number, first, last, rows: inOrder }];
    }
    case 'mode-named-twice':
    case 'past-512':
    case 'break-beyond':
    case 'unreached':
    case 'channel-named-twice':
    case 'values-overlap':
    case 'values-gap':
    case 'range-outside':
      // Said of the rows' own cells, by those who read them, or cannot be in a chart.
      return [];
    default:
      return unreachable(trouble);
  }
}

function past512(mode: DraftMode, row: LaidRow): DraftTrouble[] {
  const last = lastSlotOf(row);
  if (last <= SLOTS) return [];
  const where = { of: 'row', mode: mode.id, row: row.row.id, field: 'slots' } as const;
  return [{ where, kind: 'past-512', break: row.break, last }];
}

/** Rows whose channels GDTF would give one name; upper and lower case count as the same attribute there. */
function alike(mode: DraftMode, chart: DraftedMode, rows: readonly LaidRow[]): DraftTrouble[] {
  const byName = new Map<string, string[]>();
  for (const [at, channel] of chart.mode.channels.entries()) {
    const name = `${channel.part}\n${attributeName(channel)}`;
    const known = byName.get(name) ?? [];
    byName.set(name, [...known, rows[at]?.row.id ?? '']);
  }
  return [...byName.values()].flatMap((same): DraftTrouble[] => {
    if (same.length < 2) return [];
    const where = { of: 'row', mode: mode.id, row: same.at(-1) ?? '', field: 'attribute' } as const;
    return [{ where, kind: 'rows-alike', rows: same }];
  });
}

const attributeName = (channel: TypeChannel) => (channel.uses[0]?.attribute ?? '').toLowerCase();
