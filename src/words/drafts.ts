import { unreachable } from '#base/unreachable.ts';
import type { Draft, DraftMode, DraftRow, FactField, RowField } from '#engine/draft/draft.ts';
import type { DraftPlace, DraftTrouble } from '#engine/draft/draft-trouble.ts';
import type { TypeTrouble } from '#engine/type/type-troubles.ts';
import { typeTroubleSentence } from './fixture-types.ts';
import { listed } from './listed.ts';

/** What each fact of a draft is called. */
export const FACT_NAMES: Readonly<Record<FactField, string>> = {
  maker: 'Maker',
  model: 'Model',
  shortName: 'Short name',
  description: 'Description',
  weight: 'Weight',
  power: 'Power',
  powerFactor: 'Power factor',
  voltage: 'Voltage',
  connector: 'Power connector',
  perBreaker: 'Units per breaker',
  switches: 'Address switches',
  onLoss: 'When data stops',
  laser: 'Laser',
  strobe: 'Flashing light',
  ultraviolet: 'Ultraviolet light',
  movingParts: 'Moving parts',
  fog: 'Fog or haze',
  heat: 'Hot surfaces',
};

/** How to write each fact that is more than words. */
const FACT_FORMS: Partial<Readonly<Record<FactField, string>>> = {
  weight: 'Write kilograms, such as 7.5, without a mark for thousands.',
  power: 'Write watts, such as 480, without a mark for thousands.',
  powerFactor: 'Write a number from 0 to 1, such as 0.95.',
  voltage: 'Write volts, such as 230 or 100-240.',
  perBreaker: 'Write one breaker a line, a colon, and how many: 16 A C: 5.',
  switches: 'Write A if the switches show the address, B if they show one less.',
  laser: 'Write its class from the manual or the label: 1, 1C, 1M, 2, 2M, 3R, 3B, 4, or unknown.',
};

/** What the columns of a slot chart are called. */
export const ROW_NAMES: Readonly<Record<Exclude<RowField, 'order'>, string>> = {
  slots: 'Slots',
  break: 'Break',
  name: 'Name',
  attribute: 'Attribute',
  part: 'Part',
  default: 'Default',
  highlight: 'Highlight',
  ranges: 'Ranges',
  repeat: 'Repeat',
};

/** What is wrong with a draft: where, what, and what to do next. */
export function draftTroubleSentence(trouble: DraftTrouble, draft: Draft): string {
  const place = placeWords(trouble.where, draft);
  return place === '' ? said(trouble, draft) : `${place}: ${said(trouble, draft)}`;
}

function placeWords(where: DraftPlace, draft: Draft): string {
  switch (where.of) {
    case 'type':
      return '';
    case 'facts':
      return FACT_NAMES[where.field];
    case 'mode':
      return modeWords(modeOf(draft, where.mode));
    case 'row': {
      const mode = modeOf(draft, where.mode);
      return `${modeWords(mode)}, ${rowWords(mode, where.row)}`;
    }
    case 'repeat': {
      const mode = modeOf(draft, where.mode);
      const name = mode?.repeats.find((each) => each.id === where.repeat)?.name.trim() ?? '';
      return `${modeWords(mode)}, repeat${name === '' ? '' : ` ${quoted(name)}`}`;
    }
    default:
      return unreachable(where);
  }
}

const modeOf = (draft: Draft, id: string) => draft.modes.find((mode) => mode.id === id);

const modeWords = (mode: DraftMode | undefined) => {
  const name = mode?.name.trim() ?? '';
  return name === '' ? 'A mode without a name' : `Mode ${quoted(name)}`;
};

/** A row by its number in the chart, and what it is called. */
function rowWords(mode: DraftMode | undefined, id: string): string {
  const at = mode?.rows.findIndex((row) => row.id === id) ?? -1;
  const row = mode?.rows[at];
  const name = row === undefined ? '' : nameOf(row);
  return `row ${at + 1}${name === '' ? '' : ` ${quoted(name)}`}`;
}

const nameOf = ({ name, attribute }: DraftRow) => name.trim() || attribute.trim();

const quoted = (text: string) => `“${text.length > 60 ? `${text.slice(0, 59)}…` : text}”`;

function said(trouble: DraftTrouble, draft: Draft): string {
  switch (trouble.kind) {
    case 'no-mode':
      return 'There is no mode yet. Add one from the manual.';
    case 'no-usable-mode':
      return 'No mode takes a slot, so there is nothing to patch. Add the slots of a mode from the manual.';
    case 'missing':
      return 'not filled in. Write it as it stands on the unit or in the manual.';
    case 'unreadable-fact':
      return `${quoted(trouble.text)} cannot be read. ${FACT_FORMS[trouble.where.field] ?? 'Choose yes, or leave it empty.'}`;
    case 'mode-unnamed':
      return 'give it the name it has in the manual or in the unit’s menu.';
    case 'mode-named-twice':
      return 'another mode has the same name. Rename one of them.';
    case 'mode-without-slots':
      return 'it has no slots. Add its rows from the manual, or remove it.';
    case 'mode-kept-missing':
      return 'the revision it was kept from does not have it. Type its rows in, or remove it.';
    case 'only-virtual':
      return `none of its rows (${trouble.channels}) has a slot. Fill in the slots from the manual.`;
    case 'kept-trouble':
      return `this stands so in the revision it is kept from. ${withoutPlace(trouble.trouble)} To put it right, open its chart.`;
    default:
      return saidOfRows(trouble, draft);
  }
}

type RowTrouble = Extract<DraftTrouble, { readonly where: { readonly of: 'row' | 'repeat' } }>;

function saidOfRows(trouble: RowTrouble, draft: Draft): string {
  switch (trouble.kind) {
    case 'unreadable-slots':
      return `${quoted(trouble.text)} names no slots. Write one to four of them, coarse first: 5, 5-6 or 5, 9.`;
    case 'unreadable-break':
      return `${quoted(trouble.text)} is no break. Write 1 to 4, or leave it empty for 1.`;
    case 'unreadable-value':
      return `${ROW_NAMES[columnOf(trouble)]} ${quoted(trouble.text)} is no value. Write a number from 0 on, or 128/1 in 8 bit steps.`;
    case 'value-too-high':
      return `${ROW_NAMES[columnOf(trouble)]} ${quoted(trouble.text)} is more than it takes (${trouble.highest} at most). Check it with the manual.`;
    case 'unreadable-range':
      return `line ${trouble.line} of its ranges, ${quoted(trouble.text)}, cannot be read. Write it like 0-10 Closed.`;
    case 'range-too-high':
      return `line ${trouble.line} of its ranges, ${quoted(trouble.text)}, goes beyond 255. Write ranges in 8 bit steps, 0 to 255.`;
    case 'ranges-overlap':
      return `${valueWords(trouble)} named twice in its ranges. Check them with the manual.`;
    case 'ranges-gap':
      return `${valueWords(trouble)} not named in its ranges. Check them with the manual.`;
    case 'nothing-said':
      return 'nothing says what it does. Give it an attribute or a name.';
    case 'repeat-gone':
      return 'the repeat it belonged to is gone, so it comes once. Repeat it again, or leave it so.';
    case 'past-512':
      return `it reaches slot ${trouble.last} of break ${trouble.break}, and a universe ends at 512. Check its slots with the manual.`;
    case 'slot-taken-twice':
      return `${takenWords(trouble)} ${othersWords(trouble, draft)}. Check them with the manual.`;
    case 'rows-alike':
      return `${listed(otherRows(trouble, draft))} does the same in the same part. Give one of them another attribute or a part of its own.`;
    case 'unreadable-count':
      return `${quoted(trouble.text)} is no number of cells. Write 1 to 512.`;
    case 'unreadable-step':
      return `${quoted(trouble.text)} is no step. Write the slots from one cell to the next, or leave it empty.`;
    case 'too-many-cells':
      return `the cells of this mode (${quoted(trouble.text)} of them here) are more than its breaks have slots. Check the number with the manual.`;
    case 'repeat-without-rows':
      return 'no row belongs to it. Remove it, or repeat rows with it.';
    default:
      return unreachable(trouble);
  }
}

const columnOf = ({ where }: { readonly where: { readonly field: RowField } }) =>
  where.field === 'order' ? 'slots' : where.field;

const valueWords = ({ from, to }: { readonly from: number; readonly to: number }) =>
  from === to ? `value ${from} is` : `values ${from} to ${to} are`;

type TakenTwice = Extract<DraftTrouble, { readonly kind: 'slot-taken-twice' }>;

const takenWords = ({ first, last, break: number }: TakenTwice) =>
  `${first === last ? `slot ${first}` : `slots ${first} to ${last}`} of break ${number} ${first === last ? 'is' : 'are'} taken`;

function othersWords(trouble: TakenTwice, draft: Draft): string {
  const others = otherRows(trouble, draft);
  return others.length === 0 ? 'twice by this row or by its cells' : `by ${listed(others)} too`;
}

interface SeveralRows {
  readonly where: { readonly mode: string; readonly row: string };
  readonly rows: readonly string[];
}

function otherRows({ where, rows }: SeveralRows, draft: Draft): readonly string[] {
  const mode = modeOf(draft, where.mode);
  return rows.filter((row) => row !== where.row).map((row) => rowWords(mode, row));
}

/** A sentence about a type without its place, which stands there already. */
function withoutPlace(trouble: TypeTrouble): string {
  const text = typeTroubleSentence(trouble).slice(`Mode “${trouble.mode}”: `.length);
  return text.charAt(0).toUpperCase() + text.slice(1);
}
