import { expect, it } from 'vitest';
import { ampsText, kilogramsText, percentText, voltAmpsText, voltsText, wattsText } from './amounts.ts';

it('says amounts as short as they are still clear, and a figure of a finding as the figure it was made of', () => {
  expect([16, 4.5, 4.3478, 0.004, 151.7834, 106.8491].map(ampsText)).toEqual([
    '16 A',
    '4.5 A',
    '4.35 A',
    '0 A',
    '151.8 A',
    '106.9 A',
  ]);
  // A finding holds 106.8491 as 106.85.
  expect(ampsText(106.85)).toBe(ampsText(106.8491));
  expect(kilogramsText(1234.5)).toBe('1,234.5 kg');
  expect([percentText(0.8), wattsText(76_460), voltAmpsText(1031.6), voltsText(398.37)]).toEqual([
    '80 %',
    '76,460 W',
    '1,032 VA',
    '398 V',
  ]);
});
