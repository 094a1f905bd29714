import { parse } from 'csv-parse/sync';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { rowsOf } from '#base/table.ts';
import { checkRig } from '#engine/check/check-rig.ts';
import { applyEdits } from '#engine/model/apply-edits.ts';
import type { Edit } from '#engine/model/edit.ts';
import { fixtureId } from '#engine/model/ids.ts';
import { cellsOf } from '#engine/model/read-fixture.ts';
import { EMPTY_RIG, type Rig } from '#engine/model/rig.ts';
import { makeSheet } from '#engine/sheet/make-sheet.ts';
import { SHEET_KINDS, type SheetKind } from '#engine/sheet/sheet.ts';
import { unguardText } from '#exchange/csv/formula-guard.ts';
import { encodeChunks } from '#exchange/csv/write-csv.ts';
import { writeSheet } from '#exchange/csv/write-sheet.ts';
import { hostileRig } from '#tests/support/hostile-rig.ts';
import { importBytes } from '#tests/support/import-bytes.ts';
import { findingSentence } from '#words/findings.ts';
import { NOTHING_STANDS, sheetHead, sheetHeading, sheetPartTitle, standingOf } from '#words/sheets.ts';

describe('sheets out and in again', () => {
  it('gives the same rig: export, then import into an empty one', () => {
    const rng = seededRng(41);
    for (let round = 0; round < 200; round++) {
      const rig = hostileRig(rng, rng.int(12));
      const bytes = bytesOf('patch', rig, round % 2 === 0 ? 'no-mark' : 'byte-order-mark');
      const { rig: again, layout, list } = importBytes(bytes);
      expect(layout.form).toBe('own');
      expect(contents(again)).toEqual(contents(rig));
      expect(list.lines.filter((line) => line.kind === 'unread')).toEqual([]);
    }
  });

  it('gives the same rig after a spreadsheet has saved the sheet its own way: semicolons, no padding, another encoding', () => {
    const rng = seededRng(53);
    for (let round = 0; round < 60; round++) {
      const rig = hostileRig(rng, rng.int(12));
      const rows = Papa.parse<string[]>(new TextDecoder().decode(bytesOf('patch', rig, 'no-mark')), {
        delimiter: ',',
      }).data;
      const saved = Papa.unparse(rows, { delimiter: ';', newline: '\r\n', quotes: true });
      expect(contents(importBytes(Buffer.from(`\ufeff${saved}`, 'utf16le')).rig)).toEqual(contents(rig));
    }
  });

  it('takes a channel sheet in as the list it is: the same units, its foot as foot', () => {
    const units = [1, 2, 3, 4].map((unit) => ({
      position: 'LX 1',
      unit: String(unit),
      channel: 20 - unit,
      type: 'Spot',
      mode: 'Basic',
      address: 500 + unit * 16,
    }));
    const edits = units.map((cells, i): Edit => ({ kind: 'add-fixture', fixture: fixtureId(`f${i}`), cells }));
    const rig = applyEdits(EMPTY_RIG, [{ kind: 'set-mode', type: 'Spot', mode: 'Basic', footprints: [20] }, ...edits]);
    const { rig: again, list } = importBytes(bytesOf('channels', rig, 'byte-order-mark'));
    const cells = (each: Rig) =>
      [...rowsOf(each.fixtures)].map(({ id, order, ...rest }) => JSON.stringify(rest)).sort();
    expect(cells(again)).toEqual(cells(rig));
    expect(again.modes).toEqual(rig.modes);
    expect(list.lines.filter((line) => line.kind === 'foot').length).toBe(1 + checkRig(rig).length);
  });

  it('reads the same cells with two readers from outside (csv-parse, papaparse), strictly RFC 4180', () => {
    const rng = seededRng(43);
    for (let round = 0; round < 50; round++) {
      const rig = hostileRig(rng, rng.int(12));
      for (const kind of SHEET_KINDS) {
        const text = new TextDecoder().decode(bytesOf(kind, rig, 'no-mark'));
        const strict: string[][] = parse(text, { delimiter: ',', record_delimiter: '\r\n', relax_column_count: false });
        const other = Papa.parse<string[]>(text, { delimiter: ',', newline: '\r\n' });
        expect(other.errors).toEqual([]);
        expect(other.data.slice(0, -1)).toEqual(strict);
        const sheet = sheetOf(kind, rig);
        const rows = strict.slice(5, 5 + sheet.length);
        const printed = [...sheet.rows].map((row) => row.map((cell) => (cell === null ? '' : String(cell))));
        expect(rows.map((row) => row.slice(0, sheet.columns.length).map(unguardText))).toEqual(printed);
        // OWASP, CSV Injection: no text cell begins with what starts a formula; a number may have its sign.
        for (const cell of strict.flat()) if (/^[=+\-@\t\r]/.test(cell)) expect(cell).toMatch(/^-\d[\d.e+-]*$/);
      }
    }
  });

  it('prints every finding that stands at the foot of each sheet', () => {
    const rig = hostileRig(seededRng(47), 30);
    const sentences = checkRig(rig).map((finding) => findingSentence(finding, rig));
    expect(sentences.length).toBeGreaterThan(10);
    for (const kind of SHEET_KINDS) {
      const cells = parse(new TextDecoder().decode(bytesOf(kind, rig, 'no-mark')), { relax_column_count: false });
      const all = new Set(cells.flat().map(unguardText));
      expect(sentences.filter((sentence) => !all.has(sentence))).toEqual([]);
    }
  });
});

function sheetOf(kind: SheetKind, rig: Rig) {
  return makeSheet(kind, rig, standingOf(rig, checkRig(rig)));
}

function bytesOf(kind: SheetKind, rig: Rig, mark: 'no-mark' | 'byte-order-mark'): Uint8Array {
  const words = {
    head: sheetHead(kind, '=Rig; "one"\n', 1_790_000_000_000),
    heading: sheetHeading,
    part: sheetPartTitle,
    nothingStands: NOTHING_STANDS,
  };
  return Buffer.concat([...encodeChunks(writeSheet(sheetOf(kind, rig), words), mark)]);
}

/** Everything of a rig but the ids of its rows and notes, which an import gives anew. */
function contents(rig: Rig) {
  const inOrder = (lines: readonly unknown[]) => lines.map((line) => JSON.stringify(line)).sort();
  return {
    fixtures: inOrder([...rowsOf(rig.fixtures)].map((fixture) => Object.entries(cellsOf(fixture)).sort())),
    modes: [...rowsOf(rig.modes)],
    positions: [...rowsOf(rig.positions)],
    universes: [...rowsOf(rig.universes)],
    notes: inOrder([...rowsOf(rig.notes)].map(({ text, order }) => [text, order])),
  };
}
