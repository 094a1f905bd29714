import { RANGES_LIMIT } from '#engine/draft/cell-text.ts';
import {
  type Draft,
  type DraftMode,
  type DraftRepeat,
  type DraftRow,
  FACT_FIELDS,
  type FactField,
  type ModeField,
  type RepeatField,
  type RowField,
} from '#engine/draft/draft.ts';
import { CELL_LIMIT } from '#engine/model/field.ts';
import { type DraftCell, parseDraftCellKey } from './draft-cell.ts';

/** The cells of a draft, put together. What is not touched by a change stays the same object. */
export interface DraftIndex {
  /** Takes in what stands under a key now; undefined for nothing. */
  take(key: string, value: unknown): void;
  draft(): Draft;
}

export function createDraftIndex(entries: Iterable<readonly [string, unknown]>): DraftIndex {
  const facts = createRecord<FactField, Draft['facts']>((text) => {
    return Object.freeze(Object.fromEntries(FACT_FIELDS.map((field) => [field, text(field)]))) as Draft['facts'];
  });
  const modes = new Map<string, ModeRecord>();
  let built: Draft | undefined;
  const index: DraftIndex = {
    take(key, value) {
      const cell = parseDraftCellKey(key);
      if (cell === undefined) return;
      if (cell.of === 'facts') facts.take(cell.field, value);
      else made(modes, cell.mode, createMode).take(cell, value);
    },
    draft() {
      const now = { facts: facts.value() ?? NO_FACTS, modes: inOrder(modes) };
      if (built?.facts === now.facts && sameItems(built.modes, now.modes)) return built;
      built = Object.freeze(now);
      return built;
    },
  };
  for (const [key, value] of entries) index.take(key, value);
  return index;
}

const NO_FACTS: Draft['facts'] = Object.freeze(
  Object.fromEntries(FACT_FIELDS.map((field) => [field, ''])) as Record<FactField, string>,
);

type TextOf<Field extends string> = (field: Field) => string;

/** Some cells that belong together, and what they amount to: undefined while they do not make a whole. */
interface CellRecord<Field extends string, Whole> {
  take(field: Field, value: unknown): void;
  value(): Whole | undefined;
}

function createRecord<Field extends string, Whole>(
  build: (text: TextOf<Field>, order: number | undefined) => Whole | undefined,
): CellRecord<Field, Whole> {
  const cells = new Map<string, unknown>();
  let built: { readonly whole: Whole | undefined } | undefined;
  const text = (field: Field) => {
    const value = cells.get(field);
    return typeof value === 'string' && value.length <= limitOf(field) ? value : '';
  };
  const order = () => {
    const value = cells.get('order');
    return typeof value === 'number' && Number.isFinite(value) ? value : undefined;
  };
  return {
    take(field, value) {
      if (cells.get(field) === value) return;
      cells.set(field, value);
      built = undefined;
    },
    value() {
      built ??= { whole: build(text, order()) };
      return built.whole;
    },
  };
}

// What is longer came past `applyDraftEdits`, and would keep whoever reads it busy.
const limitOf = (field: string) => (field === 'ranges' ? RANGES_LIMIT : CELL_LIMIT);

interface ModeRecord {
  take(cell: Exclude<DraftCell, { readonly of: 'facts' }>, value: unknown): void;
  value(): DraftMode | undefined;
}

type ModeOwn = Omit<DraftMode, 'rows' | 'repeats'>;

function createMode(id: string): ModeRecord {
  const own = createRecord<ModeField, ModeOwn>((text, order) =>
    order === undefined
      ? undefined
      : {
          id,
          order,
          name: text('name'),
          description: text('description'),
          firmware: text('firmware'),
          kept: text('kept'),
        },
  );
  const rows = new Map<string, CellRecord<RowField, DraftRow>>();
  const repeats = new Map<string, CellRecord<RepeatField, DraftRepeat>>();
  let built: { readonly own: ModeOwn; readonly mode: DraftMode } | undefined;
  return {
    take(cell, value) {
      if (cell.of === 'mode') own.take(cell.field, value);
      else if (cell.of === 'row') made(rows, cell.row, createRow).take(cell.field, value);
      else made(repeats, cell.repeat, createRepeat).take(cell.field, value);
    },
    value() {
      const mine = own.value();
      if (mine === undefined) return undefined;
      const now = { rows: inOrder(rows), repeats: byId(repeats) };
      if (built?.own === mine && sameItems(built.mode.rows, now.rows) && sameItems(built.mode.repeats, now.repeats)) {
        return built.mode;
      }
      built = { own: mine, mode: Object.freeze({ ...mine, ...now }) };
      return built.mode;
    },
  };
}

const createRow = (id: string) =>
  createRecord<RowField, DraftRow>((text, order) => {
    if (order === undefined) return undefined;
    return Object.freeze({
      id,
      order,
      slots: text('slots'),
      break: text('break'),
      name: text('name'),
      attribute: text('attribute'),
      part: text('part'),
      default: text('default'),
      highlight: text('highlight'),
      ranges: text('ranges'),
      repeat: text('repeat'),
    });
  });

const createRepeat = (id: string) =>
  createRecord<RepeatField, DraftRepeat>((text) => {
    if (text('count') === '') return undefined;
    return Object.freeze({ id, name: text('name'), count: text('count'), step: text('step') });
  });

function made<Value>(map: Map<string, Value>, id: string, make: (id: string) => Value): Value {
  const known = map.get(id);
  if (known !== undefined) return known;
  const value = make(id);
  map.set(id, value);
  return value;
}

interface Ordered {
  readonly id: string;
  readonly order: number;
}

function inOrder<Whole extends Ordered>(
  records: ReadonlyMap<string, { value(): Whole | undefined }>,
): readonly Whole[] {
  return wholes(records).sort((a, b) => a.order - b.order || (a.id < b.id ? -1 : 1));
}

function byId<Whole extends { readonly id: string }>(
  records: ReadonlyMap<string, { value(): Whole | undefined }>,
): readonly Whole[] {
  return wholes(records).sort((a, b) => (a.id < b.id ? -1 : 1));
}

function wholes<Whole>(records: ReadonlyMap<string, { value(): Whole | undefined }>): Whole[] {
  return [...records.values()].flatMap((record) => record.value() ?? []);
}

const sameItems = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((item, at) => item === b[at]);
