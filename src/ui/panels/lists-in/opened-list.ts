import { ok, type Result } from '#base/result.ts';
import type { DecodedText, DecodeRefusal, Grid, GridRefusal, TextEncoding } from '#engine/list/grid.ts';
import { decodeText } from '#exchange/csv/decode-text.ts';
import { readGrid } from '#exchange/csv/read-grid.ts';

/** A list taken from a file or from pasted text, as rows of cells. */
export interface OpenedList {
  readonly name: string;
  /** Null for pasted text: the browser has decoded it. */
  readonly encoding: TextEncoding | null;
  readonly textCautions: DecodedText['cautions'];
  readonly grid: Grid;
}

export type ListRefusal = DecodeRefusal | GridRefusal;

/** Opens the bytes of a file. */
export function openBytes(name: string, bytes: Uint8Array): Result<OpenedList, ListRefusal> {
  const decoded = decodeText(bytes);
  if (!decoded.ok) return decoded;
  const { text, encoding, cautions } = decoded.value;
  return openText(name, text, encoding, cautions);
}

/** Opens text that a person pasted. */
export function openPasted(name: string, text: string): Result<OpenedList, ListRefusal> {
  return openText(name, text, null, []);
}

function openText(
  name: string,
  text: string,
  encoding: TextEncoding | null,
  textCautions: DecodedText['cautions'],
): Result<OpenedList, ListRefusal> {
  const grid = readGrid(text);
  return grid.ok ? ok({ name, encoding, textCautions, grid: grid.value }) : grid;
}
