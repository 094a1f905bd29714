import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { randomEdit, randomRig } from '#tests/support/random-rig.ts';
import { RESTORE_STANDING } from '#words/restore.ts';
import { allLines, restoreSheet } from '../diff/restore.ts';
import { applyEdits } from '../model/apply-edits.ts';
import { setCard } from '../model/card-edits.ts';
import { restoreTable } from './restore-sheet.ts';

const SHAPE = { fixtures: 20, universes: 3 };
const HASH = 'c'.repeat(64);

describe('the restore sheet that is taken out', () => {
  it('[RS5] has a row for each line, in its order, with who ticked it', () => {
    for (let seed = 0; seed < 60; seed++) {
      const rng = seededRng(seed + 30_000);
      const record = randomRig(seed, SHAPE);
      const changed = applyEdits(
        record,
        Array.from({ length: rng.int(50) }, () => randomEdit(rng, SHAPE)),
      );
      const open = allLines(restoreSheet(changed, record, HASH));
      const ticks = open.flatMap(({ key }, nth) =>
        nth % 3 === 0
          ? setCard('tick', key, { state: 'stays', by: `Person ${nth}`, at: '2026-11-25T10:00:00.000Z' })
          : [],
      );
      const sheet = restoreSheet(applyEdits(changed, ticks), record, HASH);
      const table = restoreTable(sheet, record, RESTORE_STANDING);
      const rows = [...table.rows];
      const lines = allLines(sheet);
      expect(rows).toHaveLength(lines.length);
      expect(table.length).toBe(lines.length);
      for (const [nth, line] of lines.entries()) {
        const row = rows[nth] ?? [];
        expect(row, `seed ${seed}`).toHaveLength(table.columns.length);
        expect(row[table.columns.indexOf('putBack')]).toBe(nth % 3 === 0 ? 'stays as it is' : 'to do');
        expect(row[table.columns.indexOf('tickedBy')]).toBe(nth % 3 === 0 ? `Person ${nth}` : '');
        if (line.at === 'unit') expect(row[table.columns.indexOf('position')]).toBe(line.task.position);
        expect(row[table.columns.indexOf('task')]).not.toBe('');
      }
    }
  });
});
