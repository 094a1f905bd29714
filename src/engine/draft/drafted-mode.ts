import type { FixtureType, TypeChannel, TypeMode } from '../model/fixture-type.ts';
import { type TypeTrouble, typeTroubles } from '../type/type-troubles.ts';
import { cellText, oneLine } from './cell-text.ts';
import { channelOfRow } from './channel-of-row.ts';
import type { ChartBody } from './chart-bodies.ts';
import { type ChartLayout, type LaidRow, layoutOf } from './chart-layout.ts';
import { chartTroubles } from './chart-troubles.ts';
import type { DraftMode } from './draft.ts';
import type { DraftTrouble } from './draft-trouble.ts';
import { firmwareText, readFirmware } from './firmware-text.ts';

/** A mode of a draft as a type has it, and what is wrong with it. */
export interface DraftedMode {
  readonly mode: TypeMode;
  readonly troubles: readonly DraftTrouble[];
  /** Whether it takes a slot. */
  readonly isUsable: boolean;
}

/** The mode that a chart of rows amounts to. */
export function modeOfChart(mode: DraftMode, bodyOf: (layout: ChartLayout) => ChartBody): DraftedMode {
  const { layout, channels, troubles, isUsable } = readChart(mode);
  const body = bodyOf(layout);
  const placed = layout.rows.flatMap((row, at): TypeChannel[] => {
    const channel = channels[at];
    return channel === undefined ? [] : [{ part: body.partOf(row), ...channel }];
  });
  const name = oneLine(mode.name);
  const description = mode.description.trim();
  const firmware = readFirmware(mode.firmware);
  return { mode: { name, description, root: body.root, channels: placed, firmware }, troubles, isUsable };
}

/** The mode of the base revision, with what the draft says of it as a whole. */
export function modeAsKept(mode: DraftMode, own: TypeMode, base: FixtureType): DraftedMode {
  const name = mode.name === cellText(own.name) ? own.name : oneLine(mode.name);
  const description = mode.description === cellText(own.description) ? own.description : mode.description.trim();
  const firmware = mode.firmware === firmwareText(own.firmware) ? own.firmware : readFirmware(mode.firmware);
  const where = { of: 'mode', mode: mode.id } as const;
  const found = keptTroubles(own, base);
  return {
    mode: { ...own, name, description, firmware },
    troubles: found.map((trouble) => ({ where, kind: 'kept-trouble', trouble: { ...trouble, mode: name } })),
    isUsable: !found.some((trouble) => trouble.kind === 'no-slots' || trouble.kind === 'only-virtual'),
  };
}

interface ReadChart {
  readonly layout: ChartLayout;
  /** What the rows do, in the order of the layout's rows. */
  readonly channels: readonly Omit<TypeChannel, 'part'>[];
  readonly troubles: readonly DraftTrouble[];
  readonly isUsable: boolean;
}

// A draft is read anew with every cell that anybody writes, and all its modes but one are the same objects as before.
const CHARTS = new WeakMap<DraftMode, ReadChart>();
const KEPT = new WeakMap<TypeMode, readonly TypeTrouble[]>();

function readChart(mode: DraftMode): ReadChart {
  const known = CHARTS.get(mode);
  if (known !== undefined) return known;
  const layout = layoutOf(mode);
  const read = layout.rows.map((row) => channelOfRow(row, mode.id));
  const channels = read.map(({ channel }, at) => ({ ...channel, ...placeInCell(layout.rows[at]) }));
  const whole = chartTroubles(mode, layout, channels);
  const missing: DraftTrouble[] =
    mode.kept === '' ? [] : [{ where: { of: 'mode', mode: mode.id }, kind: 'mode-kept-missing' }];
  const cells = read.flatMap((each) => each.troubles);
  const chart: ReadChart = {
    layout,
    channels,
    troubles: [...layout.troubles, ...cells, ...missing, ...whole.troubles],
    isUsable: whole.isUsable,
  };
  CHARTS.set(mode, chart);
  return chart;
}

/** Channels of cells that are all in one break take it from their copy (GDTF `Overwrite`), and count slots from its start. */
function placeInCell(row: LaidRow | undefined): Pick<TypeChannel, 'break' | 'offsets'> {
  if (row === undefined) return { break: 1, offsets: [] };
  const breaks = row.repeat?.breaks ?? [];
  const lowest = breaks.find((each) => each.break === row.break)?.lowest ?? 1;
  return { break: breaks.length === 1 ? 'of-copy' : row.break, offsets: row.slots.map((slot) => slot - lowest + 1) };
}

function keptTroubles(own: TypeMode, base: FixtureType): readonly TypeTrouble[] {
  const known = KEPT.get(own);
  if (known !== undefined) return known;
  const troubles = typeTroubles({ ...base, modes: [own] });
  KEPT.set(own, troubles);
  return troubles;
}
