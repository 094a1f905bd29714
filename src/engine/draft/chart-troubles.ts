import { unreachable } from '#base/unreachable.ts';
import { SLOTS } from '../model/address.ts';
import type { FixtureType, TypeChannel } from '../model/fixture-type.ts';
import { NO_HAZARDS, NO_SETTINGS, NOTHING_STATED } from '../model/fixture-type.ts';
import { type TypeTrouble, typeTroubles } from '../type/type-troubles.ts';
import { createChartBodies } from './chart-bodies.ts';
import { type ChartLayout, type LaidRow, lastSlotOf } from './chart-layout.ts';
import type { DraftMode } from './draft.ts';
import type { DraftTrouble } from './draft-trouble.ts';

/** What is wrong with a chart beyond its single cells. `channels` are what its rows do, in the order of `layout.rows`. */
export function chartTroubles(
  mode: DraftMode,
  layout: ChartLayout,
  channels: readonly Omit<TypeChannel, 'part'>[],
): { readonly troubles: readonly DraftTrouble[]; readonly isUsable: boolean } {
  const { rows } = layout;
  const bodies = createChartBodies([]);
  const body = bodies.bodyOf(layout);
  const placed = channels.map((channel, at): TypeChannel => {
    const row = rows[at];
    return { part: row === undefined ? body.root : body.partOf(row), ...channel };
  });
  const found = typeTroubles(namedByRows(mode, bodies.parts, body.root, placed, rows));
  const ids = new Map(placed.map((channel, at) => [nameOfRow(channel.part, rows[at]), rows[at]?.row.id]));
  return {
    troubles: [
      ...withoutRepeats(found.flatMap((trouble) => chartTrouble(mode, trouble, ids, rows))),
      ...rows.flatMap((row) => past512(mode, row)),
      ...alike(mode, placed, rows),
    ],
    isUsable: !found.some((trouble) => trouble.kind === 'no-slots' || trouble.kind === 'only-virtual'),
  };
}

/** The chart as a type of its own, whose channels are named after the ids of their rows, so that its troubles name rows. */
function namedByRows(
  mode: DraftMode,
  parts: FixtureType['parts'],
  root: string,
  channels: readonly TypeChannel[],
  rows: readonly LaidRow[],
): FixtureType {
  const named = channels.map((channel, at): TypeChannel => {
    const attribute = rows[at]?.row.id ?? '';
    return { ...channel, uses: [{ attribute, snap: 'No', master: 'None', functions: [] }] };
  });
  return {
    maker: '',
    model: '',
    shortName: '',
    description: '',
    guid: '',
    parts,
    modes: [{ name: mode.id, description: '', root, channels: named, firmware: [] }],
    physical: NOTHING_STATED,
    settings: NO_SETTINGS,
    hazards: NO_HAZARDS,
  };
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
function alike(mode: DraftMode, channels: readonly TypeChannel[], rows: readonly LaidRow[]): DraftTrouble[] {
  const byName = new Map<string, string[]>();
  for (const [at, channel] of channels.entries()) {
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
