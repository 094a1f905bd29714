import { describe, expect, it } from 'vitest';
import type { ChartRange, ChartUse } from '#engine/type/type-chart.ts';
import { byteWord, rangeText, slotUseText, toldRanges, valuesText } from './type-chart.ts';

const PAN: ChartUse = {
  attribute: 'Pan',
  cell: '',
  part: 'Yoke',
  byte: 0,
  of: 2,
  default: 128,
  highlight: null,
  ranges: [],
  rangeBytes: 1,
};

const range = (change: Partial<ChartRange>): ChartRange => ({
  from: 0,
  to: 255,
  name: 'Pan',
  function: 'Pan',
  attribute: 'Pan',
  physical: null,
  when: null,
  ...change,
});

describe('what is said of a slot', () => {
  it('names the byte only where there are several', () => {
    expect(slotUseText(PAN)).toBe('Pan, coarse, default 128');
    expect(slotUseText({ ...PAN, byte: 1, default: 0, cell: 'Cell 2', highlight: 255 })).toBe(
      'Pan, fine, cell Cell 2, default 0, highlight 255',
    );
    expect(byteWord({ byte: 0, of: 1 })).toBe('');
    expect(slotUseText({ ...PAN, of: 1, attribute: '' })).toBe('not stated (Yoke), default 128');
  });

  it('says what values do: name, another attribute, figures, condition', () => {
    expect(rangeText(range({ physical: { from: -270, to: 270 } }), PAN)).toBe('Pan, −270° to 270°');
    const strobe = { name: 'Slow to fast', attribute: 'Shutter1Strobe', physical: { from: 1, to: 18.5 } };
    expect(rangeText(range(strobe), PAN)).toBe('Slow to fast [Shutter1Strobe], 1 Hz to 18.5 Hz');
    const when = { part: 'Yoke', attribute: 'Control1', within: null, from: 0, to: 9 };
    expect(rangeText(range({ name: '', when }), PAN)).toBe('not named, only while Control1 allows it');
    expect([valuesText({ from: 7, to: 7 }), valuesText({ from: 0, to: 9 })]).toEqual(['7', '0–9']);
  });

  it('leaves out a range that says no more than its slot', () => {
    const told = (change: Partial<ChartRange>) => toldRanges({ attribute: 'Pan', ranges: [range(change)] }).length;
    expect(told({ name: 'Pan 1', physical: { from: 0, to: 1 } })).toBe(0);
    expect(told({ physical: { from: -270, to: 270 } })).toBe(1);
    expect(told({ name: 'Left to right' })).toBe(1);
    expect(told({ attribute: 'PanRotate' })).toBe(1);
    expect(toldRanges({ attribute: 'Pan', ranges: [range({ to: 9 }), range({ from: 10 })] })).toHaveLength(2);
  });
});
