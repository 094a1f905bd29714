import { expect, it } from 'vitest';
import { absolute } from '#engine/model/address.ts';
import { applyEdits } from '#engine/model/apply-edits.ts';
import type { Edit } from '#engine/model/edit.ts';
import { fixtureId } from '#engine/model/ids.ts';
import { EMPTY_RIG } from '#engine/model/rig.ts';
import { rowOrder } from '../live/rows/row-order.ts';
import { EVERYTHING } from '../live/rows/view.ts';
import { findRows } from './find-rows.ts';

const edits: readonly Edit[] = [
  { kind: 'set-mode', type: 'Spot', mode: 'Wide', footprints: [20] },
  ...[
    { position: 'LX 1', unit: '5', channel: 101, address: absolute(2, 101), type: 'Spot', mode: 'Wide' },
    { position: 'LX 1', unit: '101', channel: 7, address: absolute(1, 1), type: 'Spot', mode: 'Wide' },
    { position: 'LX 2', unit: '5', channel: 9, address: absolute(1, 101), purpose: 'Back light' },
  ].map((cells, n): Edit => ({ kind: 'add-fixture', fixture: fixtureId(`f${n}`), cells: { ...cells, order: n } })),
];
const view = { grouping: 'none', sort: null, filter: EVERYTHING } as const;
const order = rowOrder(applyEdits(EMPTY_RIG, edits), view, () => false);

it.each([
  // A bare number: the channel, then the unit, then the absolute address.
  ['101', 'f0 f1 f2'],
  ['2:101', 'f0'],
  ['2/101', 'f0'],
  ['2.101', 'f0'],
  ['613', 'f0'],
  // A slot within the footprint finds the unit that holds it.
  ['2:110', 'f0'],
  ['2:121', ''],
  ['lx 1 · 5', 'f0'],
  ['LX 1 5', 'f0'],
  ['5', 'f0 f2 f1'],
  ['lx 2', 'f2'],
  ['back', 'f2'],
  ['spot', 'f0 f1'],
  ['nowhere', ''],
  ['  ', ''],
])('%s finds %s', (text, found) => {
  expect(findRows(order, text).join(' ')).toBe(found);
});
