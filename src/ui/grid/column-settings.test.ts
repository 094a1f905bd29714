import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import {
  COLUMNS,
  type ColumnSettings,
  DEFAULT_COLUMNS,
  moveColumn,
  putColumn,
  readColumnSettings,
  resizeColumn,
  visibleColumns,
  widthOf,
} from './column-settings.ts';

describe('columns', () => {
  it('holds every column once after any changes, and reads back what it kept', () => {
    const rng = seededRng(5);
    let settings: ColumnSettings = DEFAULT_COLUMNS;
    for (let step = 0; step < 500; step++) {
      const column = rng.pick(COLUMNS);
      if (rng.int(3) === 0) settings = resizeColumn(settings, column, rng.int(900) - 100);
      else if (rng.int(2) === 0) settings = putColumn(settings, column, rng.pick(['shown', 'hidden']));
      else settings = moveColumn(settings, visibleColumns(settings, 2), column, rng.pick([1, -1]));
      expect([...settings.order].sort()).toEqual([...COLUMNS].sort());
      expect(readColumnSettings(JSON.parse(JSON.stringify(settings)))).toEqual(settings);
    }
  });

  it('shows a start address of a later break where a mode has one', () => {
    expect(visibleColumns(DEFAULT_COLUMNS, 1)).not.toContain('address2');
    expect(visibleColumns(DEFAULT_COLUMNS, 3)).toContain('address3');
    expect(visibleColumns(DEFAULT_COLUMNS, 3)).not.toContain('address4');
  });

  it('moves a column past the one beside it that is shown', () => {
    const settings = putColumn(DEFAULT_COLUMNS, 'position', 'hidden');
    const visible = visibleColumns(settings, 1);
    expect(visibleColumns(moveColumn(settings, visible, 'channel', 1), 1).slice(0, 2)).toEqual(['unit', 'channel']);
    expect(moveColumn(settings, visible, 'channel', -1)).toBe(settings);
  });

  it.each([null, 'x', 7, [], {}, { order: 7, shown: 'y', widths: { type: -4, bogus: 80 } }, { order: ['a', 'a'] }])(
    'reads %j as the usual columns',
    (kept) => {
      expect(readColumnSettings(kept)).toEqual(DEFAULT_COLUMNS);
      expect(widthOf(readColumnSettings(kept), 'type')).toBeGreaterThan(40);
    },
  );
});
