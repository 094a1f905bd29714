import type { ChannelFunction, NamedRange, Resolution, TypeChannel } from '../model/fixture-type.ts';
import { highest } from '../type/dmx-value.ts';
import { oneLine } from './cell-text.ts';
import type { LaidRow } from './chart-layout.ts';
import type { DraftRow } from './draft.ts';
import type { DraftTrouble } from './draft-trouble.ts';
import { withoutGuess } from './guess.ts';
import { type RangeLine, readRanges } from './read-ranges.ts';
import { readValue } from './read-value.ts';
import { createUniqueNames } from './unique-names.ts';

/** What a row does, and where in its part: the slots are those of the first cell, counted from 1. */
type RowChannel = Omit<TypeChannel, 'part' | 'break'>;

interface ReadRow {
  readonly channel: RowChannel;
  readonly troubles: readonly DraftTrouble[];
}

/** The channel that a row amounts to, but for its part, and what is wrong with its cells. */
export function channelOfRow(laid: LaidRow, mode: string): ReadRow {
  const known = READ.get(laid.row);
  if (known?.mode === mode) return known;
  const read = { mode, ...readRow(laid, mode) };
  READ.set(laid.row, read);
  return read;
}

// A chart is read anew with every cell that anybody writes, and all its rows but one are the same objects as before.
const READ = new WeakMap<DraftRow, ReadRow & { readonly mode: string }>();

function readRow({ row, slots }: LaidRow, mode: string): ReadRow {
  const where = { of: 'row', mode, row: row.id } as const;
  const attribute = attributeOf(row);
  const resolution = Math.max(1, slots.length) as Resolution;
  const { lines, troubles } = readRanges(row.ranges);
  const said: DraftTrouble[] = troubles.map((trouble) => ({ where: { ...where, field: 'ranges' }, ...trouble }));
  const value = (field: 'default' | 'highlight'): number | null => {
    const read = readValue(row[field], resolution);
    if (typeof read !== 'string') return read;
    const text = row[field].trim();
    const place = { where: { ...where, field }, text };
    said.push(
      read === 'value-too-high' ? { ...place, kind: read, highest: highest(resolution) } : { ...place, kind: read },
    );
    return null;
  };
  if (attribute === NOTHING) said.push({ where: { ...where, field: 'attribute' }, kind: 'nothing-said' });
  const bare = functionsOf(attribute, oneLine(row.name) || `${attribute} 1`, lines, resolution);
  const { functions, initial } = withDefault(bare, value('default') ?? 0);
  return {
    channel: {
      offsets: slots,
      resolution,
      highlight: value('highlight'),
      initial: initial === null ? null : { attribute, name: initial },
      // A dimmer is what a grand master acts on (common practice); a chart says nothing of either.
      uses: [{ attribute, snap: 'No', master: attribute === 'Dimmer' ? 'Grand' : 'None', functions }],
    },
    troubles: said,
  };
}

/** GDTF's attribute of what has none. */
const NOTHING = 'NoFeature';

/** The attribute of a row, confirmed or guessed; its name where none is given. */
const attributeOf = (row: LaidRow['row']): string =>
  oneLine(withoutGuess(row.attribute)) || oneLine(row.name) || NOTHING;

type Growing = Omit<ChannelFunction, 'ranges'> & { readonly ranges: NamedRange[] };

/** A line with an attribute starts a function; a gap after a line is a range without a name, which ends the one before. */
function functionsOf(
  attribute: string,
  name: string,
  lines: readonly RangeLine[],
  resolution: Resolution,
): readonly ChannelFunction[] {
  const step = 256 ** (resolution - 1);
  const names = createUniqueNames([]);
  const begin = (of: string, from: number, called: string): Growing => {
    return { name: names(called), attribute: of, from, default: from, physical: null, when: null, ranges: [] };
  };
  const range = (called: string, from: number): NamedRange => ({ name: called, from: from * step, physical: null });
  const functions: Growing[] = [];
  const first = lines[0];
  if (first === undefined || first.from > 0 || first.attribute === '') functions.push(begin(attribute, 0, name));
  if (first !== undefined && first.from > 0 && first.attribute === '') functions[0]?.ranges.push(range('', 0));
  for (const [at, line] of lines.entries()) {
    if (line.attribute !== '') {
      const called = functions.length === 0 ? name : `${line.attribute} ${functions.length + 1}`;
      functions.push(begin(line.attribute, line.from * step, called));
    }
    const ranges = functions.at(-1)?.ranges;
    ranges?.push(range(line.name, line.from));
    if (line.to + 1 < (lines[at + 1]?.from ?? 256)) ranges?.push(range('', line.to + 1));
  }
  return functions;
}

/** The function that a value is in stands at it; it is named when the channel does not begin in its first one. */
function withDefault(functions: readonly ChannelFunction[], value: number) {
  const at = functions.findLastIndex((each) => each.from <= value);
  return {
    functions: functions.map((each, place) => (place === at ? { ...each, default: value } : each)),
    initial: at > 0 ? (functions[at]?.name ?? null) : null,
  };
}
