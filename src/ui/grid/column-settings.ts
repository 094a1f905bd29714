import { rowsOf } from '#base/table.ts';
import { PERSON_FIELDS } from '#engine/model/field.ts';
import type { Rig } from '#engine/model/rig.ts';
import type { ColumnId } from '../live/rows/column.ts';

/** How one person wants the columns: all of them in order, which are shown, and widths in pixels where they differ. */
export interface ColumnSettings {
  readonly order: readonly ColumnId[];
  /** What a person chose; a column not named is shown when it usually is. */
  readonly shown: Partial<Readonly<Record<ColumnId, boolean>>>;
  readonly widths: Partial<Readonly<Record<ColumnId, number>>>;
}

export const COLUMNS: readonly ColumnId[] = [
  ...PERSON_FIELDS.slice(0, PERSON_FIELDS.indexOf('purpose')),
  'footprint',
  ...PERSON_FIELDS.slice(PERSON_FIELDS.indexOf('purpose')),
];

export const DEFAULT_COLUMNS: ColumnSettings = Object.freeze({ order: COLUMNS, shown: {}, widths: {} });

const WIDTHS: Readonly<Record<ColumnId, number>> = {
  channel: 56,
  position: 108,
  unit: 52,
  type: 192,
  mode: 112,
  address: 88,
  address2: 80,
  address3: 80,
  address4: 80,
  footprint: 48,
  purpose: 124,
  colour: 84,
  circuit: 68,
  notes: 120,
  firmware: 76,
  run: 84,
  cable: 64,
  lock: 84,
};

const NARROWEST = 40;
const WIDEST = 600;

export const widthOf = (settings: ColumnSettings, column: ColumnId): number =>
  settings.widths[column] ?? WIDTHS[column];

export function resizeColumn(settings: ColumnSettings, column: ColumnId, width: number): ColumnSettings {
  const fitted = Math.round(Math.max(NARROWEST, Math.min(WIDEST, width)));
  return { ...settings, widths: { ...settings.widths, [column]: fitted } };
}

/** Moves a column by one place among those shown; the same settings when it stands at the edge. */
export function moveColumn(
  settings: ColumnSettings,
  visible: readonly ColumnId[],
  column: ColumnId,
  step: 1 | -1,
): ColumnSettings {
  const beside = visible[visible.indexOf(column) + step];
  if (beside === undefined) return settings;
  const order = settings.order.filter((other) => other !== column);
  order.splice(order.indexOf(beside) + (step === 1 ? 1 : 0), 0, column);
  return { ...settings, order };
}

export function putColumn(settings: ColumnSettings, column: ColumnId, to: 'shown' | 'hidden'): ColumnSettings {
  return { ...settings, shown: { ...settings.shown, [column]: to === 'shown' } };
}

/** The columns to draw, in order. Start addresses of later breaks show themselves where a mode has such a break. */
export function visibleColumns(settings: ColumnSettings, breaks: number): readonly ColumnId[] {
  return settings.order.filter((column) => settings.shown[column] ?? isUsual(column, breaks));
}

const UNUSUAL: ReadonlySet<ColumnId> = new Set(['run', 'cable', 'lock']);

function isUsual(column: ColumnId, breaks: number): boolean {
  const part = ['address2', 'address3', 'address4'].indexOf(column);
  return part < 0 ? !UNUSUAL.has(column) : breaks >= part + 2;
}

/** The most breaks a mode of this rig has; 1 when it has no mode. */
export function mostBreaks(rig: Rig): number {
  let most = 1;
  for (const { footprints } of rowsOf(rig.modes)) most = Math.max(most, footprints.length);
  return most;
}

/** Reads settings kept on the device: whatever in them is not a column or a width falls away. */
export function readColumnSettings(kept: unknown): ColumnSettings {
  if (typeof kept !== 'object' || kept === null) return DEFAULT_COLUMNS;
  const { order, shown, widths } = kept as Partial<Record<string, unknown>>;
  const wanted = Array.isArray(order) ? [...new Set<unknown>(order)].filter(isColumn) : [];
  const missing = COLUMNS.filter((column) => !wanted.includes(column));
  return {
    order: [...wanted, ...missing],
    shown: entriesOf(shown, (value) => typeof value === 'boolean'),
    widths: entriesOf(widths, (value) => typeof value === 'number' && value >= NARROWEST && value <= WIDEST),
  };
}

const isColumn = (value: unknown): value is ColumnId => (COLUMNS as readonly unknown[]).includes(value);

function entriesOf<T>(kept: unknown, fits: (value: unknown) => boolean): Partial<Record<ColumnId, T>> {
  if (typeof kept !== 'object' || kept === null) return {};
  const entries = Object.entries(kept).filter(([column, value]) => isColumn(column) && fits(value));
  return Object.fromEntries(entries) as Partial<Record<ColumnId, T>>;
}
