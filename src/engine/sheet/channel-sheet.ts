import type { Rig } from '../model/rig.ts';
import { cellsReader, columnsFor } from './fixture-cells.ts';
import type { PatchColumn } from './patch-format.ts';
import { cautionLines, findingLines, rowsFrom, type Sheet, type Standing } from './sheet.ts';
import { byChannel } from './sheet-order.ts';

const COLUMNS: readonly PatchColumn[] = [
  'channel',
  'position',
  'unit',
  'purpose',
  'colour',
  'type',
  'mode',
  'footprint',
  'universe',
  'slot',
  'universe2',
  'slot2',
  'universe3',
  'slot3',
  'universe4',
  'slot4',
  'circuit',
  'notes',
  'firmware',
  'run',
  'lock',
];

/** One row per fixture by channel, for whoever calls them; fixtures without a channel stand at the end. */
export function channelSheet(rig: Rig, standing: Standing): Sheet {
  const fixtures = byChannel(rig);
  const columns = columnsFor(fixtures, COLUMNS);
  const rows = rowsFrom(fixtures, cellsReader(rig, columns));
  return {
    kind: 'channels',
    columns,
    ...rows,
    foot: [...cautionLines(rig, fixtures, standing), ...findingLines(standing)],
  };
}
