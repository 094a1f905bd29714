import { assert } from '#base/assert.ts';
import { type Draft, type DraftMode, type DraftRow, FACT_FIELDS, type FactField } from '#engine/draft/draft.ts';
import { typeOfDraft } from '#engine/draft/type-of-draft.ts';
import type { ChannelFunction, FixtureType } from '#engine/model/fixture-type.ts';

/** A fixture type as its manual tells it, in the texts that a person would type. */
export interface TypeTable {
  readonly facts: Partial<Readonly<Record<FactField, string>>>;
  readonly modes: readonly ModeTable[];
  /** Per attribute, the physical values at both ends of what it does, in its unit (GDTF, PhysicalUnit). */
  readonly spans?: Readonly<Record<string, readonly [from: number, to: number]>>;
}

export interface ModeTable {
  readonly name: string;
  readonly description?: string;
  readonly firmware?: string;
  readonly rows: readonly RowTable[];
  /** Rows that come `count` times, behind the others; their slots are those of the first cell. */
  readonly cells?: { readonly name: string; readonly count: number; readonly rows: readonly RowTable[] };
}

type RowTable = Partial<Readonly<Record<RowText, string>>>;
type RowText = Exclude<keyof DraftRow, 'id' | 'order' | 'repeat'>;

/** A line of a chart: slots as the manual numbers them, what it calls them, the GDTF attribute; then its ranges, one a text. */
export function slot(slots: string, name: string, attribute: string, ...ranges: readonly string[]): RowTable {
  return { slots, name, attribute, ranges: ranges.join('\n') };
}

/** The line, with the value it stands at first. */
export const from = (value: string, row: RowTable): RowTable => ({ default: value, ...row });

/** The line, with the value that lets the light be seen. */
export const lit = (value: string, row: RowTable): RowTable => ({ highlight: value, ...row });

/** The fixture type that a table says. Throws when anything in it cannot be read, or is wrong. */
export function typeOfTable({ facts, modes, spans = {} }: TypeTable): FixtureType {
  const draft: Draft = {
    facts: { ...NO_FACTS, ...facts },
    modes: modes.map(modeOfTable),
  };
  const { type, troubles } = typeOfDraft(draft, null);
  assert(troubles.length === 0, `${facts.maker} ${facts.model}: ${JSON.stringify(troubles)}`);
  return withSpans(type, new Map(Object.entries(spans)));
}

const NO_FACTS = Object.fromEntries(FACT_FIELDS.map((field) => [field, ''])) as Record<FactField, string>;

function modeOfTable({ name, description = '', firmware = '', rows, cells }: ModeTable, at: number): DraftMode {
  const own = rows.map((row) => ({ ...NO_ROW, ...row }));
  const repeated = (cells?.rows ?? []).map((row) => ({ ...NO_ROW, ...row, repeat: 'cells' }));
  return {
    id: `mode-${at + 1}`,
    order: at + 1,
    name,
    description,
    firmware,
    kept: '',
    rows: [...own, ...repeated].map((row, place) => ({ ...row, id: `row-${place + 1}`, order: place + 1 })),
    repeats: cells === undefined ? [] : [{ id: 'cells', name: cells.name, count: String(cells.count), step: '' }],
  };
}

const NO_ROW: Omit<DraftRow, 'id' | 'order'> = {
  slots: '',
  break: '',
  name: '',
  attribute: '',
  part: '',
  default: '',
  highlight: '',
  ranges: '',
  repeat: '',
};

type Spans = ReadonlyMap<string, readonly [from: number, to: number]>;

function withSpans(type: FixtureType, spans: Spans): FixtureType {
  const modes = type.modes.map((mode) => ({
    ...mode,
    channels: mode.channels.map((channel) => ({
      ...channel,
      uses: channel.uses.map((use) => ({ ...use, functions: use.functions.map((each) => withSpan(each, spans)) })),
    })),
  }));
  return { ...type, modes };
}

/** A function of one range only is that range, so it spans the same. */
function withSpan(each: ChannelFunction, spans: Spans): ChannelFunction {
  const [first, last] = spans.get(each.attribute) ?? [];
  if (first === undefined || last === undefined) return each;
  const physical = { from: first, to: last };
  const ranges = each.ranges.length === 1 ? each.ranges.map((range) => ({ ...range, physical })) : each.ranges;
  return { ...each, physical, ranges };
}
