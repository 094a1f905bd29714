import { unreachable } from '#base/unreachable.ts';
import { formatCardCell } from '#engine/model/card.ts';
import { END_MARK, formatFootprints, RECORD_MARKS } from '#engine/sheet/patch-format.ts';
import type { FootLine, Sheet, SheetColumn, SheetPart } from '#engine/sheet/sheet.ts';
import { type CsvCell, writeCsv } from './write-csv.ts';

/** The words of a sheet: the lines above its table, its headings, and what its foot says when nothing stands or is to be done. */
export interface SheetWords {
  readonly head: readonly string[];
  readonly heading: (column: SheetColumn) => string;
  /** What a table of several is called. */
  readonly part: (part: SheetPart) => string;
  readonly nothingStands: string;
}

/** A sheet as CSV, in chunks of text: title lines, headings, rows, and the foot behind the line that ends the list. */
export function writeSheet(sheet: Sheet, words: SheetWords): Generator<string> {
  const widths = [sheet, ...(sheet.tables ?? [])].map(({ columns }) => columns.length);
  return writeCsv(linesOf(sheet, words), Math.max(...widths, 5));
}

function* linesOf(sheet: Sheet, words: SheetWords): Generator<readonly CsvCell[]> {
  for (const line of words.head) yield [line];
  yield [];
  for (const table of sheet.tables ?? [sheet]) {
    if ('part' in table) yield [words.part(table.part)];
    yield table.columns.map(words.heading);
    yield* table.rows;
    yield [];
  }
  yield [END_MARK];
  for (const line of sheet.foot) yield footCells(line);
  const isOwn = sheet.kind === 'findings' || sheet.kind === 'changes' || sheet.kind === 'restore';
  const none = isOwn ? sheet.length === 0 : !sheet.foot.some(({ kind }) => kind === 'finding');
  if (none) yield [words.nothingStands];
}

function footCells(line: FootLine): readonly CsvCell[] {
  const mark = RECORD_MARKS[line.kind];
  switch (line.kind) {
    case 'mode':
      return [mark, line.type, line.mode, formatFootprints(line.footprints)];
    case 'position':
      return [mark, line.name, line.order];
    case 'universe':
      return [mark, line.universe, line.label];
    case 'note':
      return [mark, line.text, line.order];
    case 'wanted':
      return [mark, line.type, line.version];
    case 'signature':
      return [mark, line.hazard, line.person, line.on, line.type];
    case 'card':
      return [mark, line.card, line.key, line.field, formatCardCell(line.value)];
    case 'caution':
      return [mark, line.type, line.text];
    case 'finding':
      return [mark, line.severity, line.text];
    default:
      return unreachable(line);
  }
}
