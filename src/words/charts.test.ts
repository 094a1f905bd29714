import { describe, expect, it } from 'vitest';
import { type ChartRemark, LEFT_OUT_REASONS, REMARK_CODES } from '#engine/draft/chart-reading.ts';
import { LEFT_OUT_WORDS, sayBecame, sayChartRefusal, sayChartRemark, sayRepeat } from './charts.ts';

describe('words about pasted charts', () => {
  it('have a sentence of their own for every remark and reason', () => {
    const remarks = REMARK_CODES.map((code): ChartRemark => ({ code, row: 0, text: '8, 7' })).map(sayChartRemark);
    const all = [...remarks, ...LEFT_OUT_REASONS.map((reason) => LEFT_OUT_WORDS[reason])];
    expect(new Set(all).size).toBe(REMARK_CODES.length + LEFT_OUT_REASONS.length);
    expect(all.filter((sentence) => !sentence.endsWith('.'))).toEqual([]);
  });

  it('say rows as they are counted on screen, and the mode where there are several', () => {
    const of = [
      { mode: 0, row: 2 },
      { mode: 1, row: 3 },
      { mode: 1, row: 4 },
    ];
    expect(sayBecame({ kind: 'row', of: of.slice(0, 1) }, [{ name: '' }])).toBe('Row 3');
    expect(sayBecame({ kind: 'range', of }, [{ name: 'Basic' }, { name: '' }])).toBe(
      'Values of row 3 (Basic), 4 to 5 (chart 2)',
    );
    expect(sayBecame({ kind: 'left-out', reason: 'no-row' }, [])).toBe(LEFT_OUT_WORDS['no-row']);
    expect(sayRepeat({ firstRow: 1, rows: 3, count: 8, step: 4 })).toBe(
      '3 rows from row 2 on come 8 times, each time 4 slots further.',
    );
  });

  it('say what was too much', () => {
    expect(sayChartRefusal({ code: 'too-many-lines', limit: 20_000 }).what).toBe(
      'The text has more than 20,000 lines.',
    );
  });
});
