import { attributeFacts } from '#engine/type/attributes.ts';
import type { ChartRange, ChartUse } from '#engine/type/type-chart.ts';

export const CHART_WORDS = {
  slot: 'Slot',
  does: 'What it does',
  cell: 'Cell',
  byte: 'Byte',
  default: 'Default',
  highlight: 'Highlight',
  ranges: 'Values',
  hole: 'Not used',
  unnamed: 'not named',
  breakTitle: (number: number) => `Break ${number}`,
  twice: 'taken twice',
  alsoWhen: (channel: string) => `only while ${channel} allows it`,
  outOf: (highest: number) => `of ${highest.toLocaleString('en-GB')}`,
} as const;

const BYTES = ['coarse', 'fine', 'third byte', 'fourth byte'] as const;

/** Which byte of a value a slot carries; empty when it carries all of it. */
export const byteWord = ({ byte, of }: Pick<ChartUse, 'byte' | 'of'>): string => (of === 1 ? '' : (BYTES[byte] ?? ''));

/** What a slot does, as its attribute says; who wrote the type may not have said. */
export const attributeWord = ({ attribute, part }: Pick<ChartUse, 'attribute' | 'part'>): string =>
  attribute === '' ? `not stated (${part})` : attribute;

/** Values as one dials them: `0–10`, `255`. */
export const valuesText = ({ from, to }: Pick<ChartRange, 'from' | 'to'>): string =>
  from === to ? `${from}` : `${from}–${to}`;

/**
 * The ranges worth reading: a single one that covers everything, is named after its slot and has no figures says nothing
 * that the slot does not.
 */
export function toldRanges({ attribute, ranges }: Pick<ChartUse, 'attribute' | 'ranges'>): readonly ChartRange[] {
  const [only] = ranges;
  if (ranges.length !== 1 || only === undefined || only.when !== null) return ranges;
  const plain = only.name === '' || only.name.startsWith(attribute);
  return plain && only.attribute === attribute && physicalText(only) === '' ? [] : ranges;
}

/** What a stretch of values does: its name, what it changes when that is not what its slot does first, and its figures. */
export function rangeText(range: ChartRange, use: Pick<ChartUse, 'attribute'>): string {
  const other = range.attribute === use.attribute || range.attribute === '' ? '' : `[${range.attribute}]`;
  const when = range.when === null ? '' : CHART_WORDS.alsoWhen(range.when.attribute);
  const name = range.name === '' ? CHART_WORDS.unnamed : range.name;
  const called = other === '' ? name : `${name} ${other}`;
  return [called, physicalText(range), when].filter((text) => text !== '').join(', ');
}

const UNITS = { Angle: '°', Frequency: ' Hz', Length: ' m', Temperature: ' K', ColorComponent: '', None: '' } as const;

/** `−270° to 270°`; empty without figures, and for the bare 0 to 1 that files write when nobody measured. */
function physicalText({ physical, attribute }: ChartRange): string {
  if (physical === null || (physical.from === 0 && physical.to === 1)) return '';
  const unit = UNITS[attributeFacts(attribute)?.unit ?? 'None'];
  const said = (value: number) => `${String(rounded(value)).replace('-', '−')}${unit}`;
  return physical.from === physical.to ? said(physical.from) : `${said(physical.from)} to ${said(physical.to)}`;
}

const rounded = (value: number) => Number(value.toPrecision(6));

/** All that a slot does but its ranges, in one line: `Dimmer, coarse, cell Cell 1, default 0, highlight 255`. */
export function slotUseText(use: ChartUse): string {
  const byte = byteWord(use);
  const cell = use.cell === '' ? '' : `cell ${use.cell}`;
  const highlight = use.highlight === null ? '' : `highlight ${use.highlight}`;
  return [attributeWord(use), byte, cell, `default ${use.default}`, highlight].filter((text) => text !== '').join(', ');
}

/** The part a slot's channel belongs to, for where nothing else tells two of them apart. */
export const partText = ({ part }: Pick<ChartUse, 'part'>): string => `of part ${part}`;
