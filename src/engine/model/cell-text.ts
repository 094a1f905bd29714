import { formatAddress, parseAddress } from '../address/notation.ts';
import { isAbsolute } from './address.ts';
import { ADDRESS_FIELDS, type AddressField, type CellValue, type Field } from './field.ts';

/**
 * What a person's text in a cell means, ready to be stored: a number where the field is a number (`12`, `2/101`), the
 * text itself where it cannot be read (the cell is then reported, never lost), null for nothing. Text fields keep their
 * text as it is. In a number field a leading apostrophe says "this is text": `'12` is the text 12, not the number.
 */
export function parseCellText(field: Field, text: string): CellValue {
  if (!isNumberField(field)) return text === '' ? null : text;
  if (text.startsWith("'")) return text.length > 1 ? text.slice(1) : null;
  const trimmed = text.trim();
  if (trimmed === '') return null;
  if (isAddressField(field)) return readAddress(trimmed) ?? text;
  return (field === 'cable' ? readMetres(trimmed) : readNumber(trimmed)) ?? text;
}

/**
 * A cell as text a person reads and may type back: `parseCellText(field, formatCell(field, value))` is `value`, for
 * every value a fixture's cell can hold.
 */
export function formatCell(field: Field, value: CellValue): string {
  if (value === null) return '';
  if (typeof value === 'number') return isAddressField(field) ? printAddress(value) : String(value);
  return parseCellText(field, value) === value ? value : `'${value}`;
}

export function isAddressField(field: Field): field is AddressField {
  return (ADDRESS_FIELDS as readonly Field[]).includes(field);
}

const NUMBER_FIELDS: ReadonlySet<Field> = new Set(['channel', 'order', 'along', 'cable']);

/** Whether the field holds a number, so that text in it is something that could not be read. */
export function isNumberField(field: Field): boolean {
  return NUMBER_FIELDS.has(field) || isAddressField(field);
}

/** A whole number, leading zeros allowed, or any number exactly as it is printed; else undefined. */
function readNumber(text: string): number | undefined {
  if (/^\d{1,15}$/.test(text)) return Number(text);
  return isPrinted(text, String) ? Number(text) : undefined;
}

/** Metres, with a decimal point or comma, the unit allowed behind: `7.5`, `7,5 m`; or any number exactly as it is printed. */
function readMetres(text: string): number | undefined {
  const plain = /^(\d{1,9}(?:[.,]\d{1,6})?)\s*m?$/i.exec(text)?.[1];
  return plain === undefined ? readNumber(text) : Number(plain.replace(',', '.'));
}

/** `2.101` is an address, so a stray fraction prints with an exponent and is read back from that form only. */
function readAddress(text: string): number | undefined {
  const address = parseAddress(text);
  if (address.ok) return address.value;
  if (isPrinted(text, String) && Number.isInteger(Number(text))) return Number(text);
  return isPrinted(text, (value) => value.toExponential()) ? Number(text) : undefined;
}

function isPrinted(text: string, print: (value: number) => string): boolean {
  const value = Number(text);
  return Number.isFinite(value) && print(value) === text;
}

function printAddress(value: number): string {
  if (isAbsolute(value)) return formatAddress(value);
  return Number.isInteger(value) ? String(value) : value.toExponential();
}
