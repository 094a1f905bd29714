import type { TypeChannel, TypeMode } from '../model/fixture-type.ts';
import { oneLine } from './cell-text.ts';
import { channelOfRow } from './channel-of-row.ts';
import type { ChartBody } from './chart-bodies.ts';
import { type ChartLayout, type LaidRow, layoutOf } from './chart-layout.ts';
import type { DraftMode } from './draft.ts';
import type { DraftTrouble } from './draft-trouble.ts';
import { readFirmware } from './firmware-text.ts';

/** A mode of a draft as a type has it. */
export interface DraftedMode {
  readonly mode: TypeMode;
  /** The row of each of its channels, in their order; null for a mode that is kept. */
  readonly rows: readonly LaidRow[] | null;
  /** What is wrong with its cells. */
  readonly troubles: readonly DraftTrouble[];
}

/** The mode that a chart of rows amounts to. */
export function modeOfChart(mode: DraftMode, bodyOf: (layout: ChartLayout) => ChartBody): DraftedMode {
  const layout = layoutOf(mode);
  const body = bodyOf(layout);
  const troubles: DraftTrouble[] = [...layout.troubles];
  const channels = layout.rows.map((row): TypeChannel => {
    const read = channelOfRow(row, mode.id);
    troubles.push(...read.troubles);
    return { part: body.partOf(row), ...placeInCell(row), ...read.channel, offsets: offsetsInCell(row) };
  });
  return {
    mode: {
      name: oneLine(mode.name),
      description: mode.description.trim(),
      root: body.root,
      channels,
      firmware: readFirmware(mode.firmware),
    },
    rows: layout.rows,
    troubles,
  };
}

/** Channels of cells that are all in one break take it from their copy (GDTF `Overwrite`). */
function placeInCell(row: LaidRow): Pick<TypeChannel, 'break'> {
  return { break: row.repeat?.breaks.length === 1 ? 'of-copy' : row.break };
}

function offsetsInCell({ slots, break: number, repeat }: LaidRow): readonly number[] {
  const lowest = repeat?.breaks.find((each) => each.break === number)?.lowest ?? 1;
  return slots.map((slot) => slot - lowest + 1);
}
