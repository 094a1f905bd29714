import { expect, it } from 'vitest';
import { closingOf } from './closing.ts';

const press = (key: string, held: { ctrlKey?: boolean; shiftKey?: boolean } = {}) => ({
  key,
  ctrlKey: false,
  metaKey: false,
  shiftKey: false,
  ...held,
});

it('closes an open cell down, up, on, back, for all selected cells, or leaves it', () => {
  expect(closingOf(press('Enter'), 'inside')).toEqual({ scope: 'cell', onward: 'down' });
  expect(closingOf(press('Enter', { shiftKey: true }), 'inside')).toEqual({ scope: 'cell', onward: 'up' });
  expect(closingOf(press('Enter', { ctrlKey: true }), 'replace')).toEqual({ scope: 'selection', onward: 'stay' });
  expect(closingOf(press('Tab'), 'inside')).toEqual({ scope: 'cell', onward: 'right' });
  expect(closingOf(press('Tab', { shiftKey: true }), 'inside')).toEqual({ scope: 'cell', onward: 'left' });
  expect(closingOf(press('Escape'), 'replace')).toBe('leave');
});

it('lets arrows move within the text, except where typing opened the cell', () => {
  expect(closingOf(press('ArrowLeft'), 'inside')).toBeUndefined();
  expect(closingOf(press('ArrowLeft'), 'replace')).toEqual({ scope: 'cell', onward: 'left' });
  expect(closingOf(press('ArrowLeft', { shiftKey: true }), 'replace')).toBeUndefined();
  expect(closingOf(press('a'), 'replace')).toBeUndefined();
});
