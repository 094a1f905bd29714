import type { MakeId } from '#base/random-id.ts';
import type { Plan, PlanName } from '#engine/model/edit.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import type { PlanRefusal } from '#engine/patch/plan-refusal.ts';
import { createListeners } from '../live/listeners.ts';
import type { ApplyRefusal, RigStore } from '../live/rig-store.ts';
import type { RigStep } from '../live/rig-watch.ts';
import { advanceOrder } from '../live/rows/advance-order.ts';
import type { ColumnId } from '../live/rows/column.ts';
import { lineOf } from '../live/rows/lines.ts';
import { type Layout, type RowOrder, rowOrder } from '../live/rows/row-order.ts';
import { EVERYTHING, type View } from '../live/rows/view.ts';
import { type ColumnSettings, mostBreaks, readColumnSettings, visibleColumns } from './column-settings.ts';
import type { PasteRefusal } from './plans/paste-cells.ts';
import { type CellRef, type Ground, mendSelection, type Selection } from './selection.ts';

/** A cell that is open for typing. */
export interface Editing {
  readonly cell: CellRef;
  /** What stands in the field now. */
  readonly text: string;
  /** `replace`: typing opened it, and arrows leave it; `inside`: arrows move within the text. */
  readonly how: 'replace' | 'inside';
}

/** Something to tell the person; `words/` says it. */
export type Notice =
  | { readonly kind: 'refused'; readonly refusal: ApplyRefusal | PasteRefusal }
  | { readonly kind: 'no-plan'; readonly refusal: PlanRefusal }
  | { readonly kind: 'left-out'; readonly cells: number }
  | { readonly kind: 'cut-short' }
  | { readonly kind: 'undone' | 'redone'; readonly plan: PlanName }
  | { readonly kind: 'nothing-to-undo' | 'nothing-to-redo' | 'no-finding' }
  | { readonly kind: 'not-found' | 'row-gone'; readonly text: string }
  | { readonly kind: 'done'; readonly plan: PlanName }
  | { readonly kind: 'locks'; readonly way: 'locked' | 'unlocked'; readonly units: number };

/** A plan that is looked at before it is applied. */
export interface Previewed {
  readonly plan: Plan;
  /** What the plan says of itself beside what it changes: one sentence each. */
  readonly says: readonly string[];
  /** What moving each unit costs, where the plan counts that. */
  readonly costs: ReadonlyMap<FixtureId, number> | undefined;
}

/** What can be open beside the sheet. */
export type PanelName =
  | 'findings'
  | 'slots'
  | 'filter'
  | 'columns'
  | 'plans'
  | 'types'
  | 'firmware'
  | 'hazards'
  | 'positions'
  | 'loads'
  | 'upkeep'
  | 'notes'
  | 'keys';

/** What one person has before them. A value; `Sheet` says when there is a new one. */
export interface SheetState {
  readonly view: View;
  readonly layout: Layout;
  readonly settings: ColumnSettings;
  /** The columns drawn, in order. */
  readonly columns: readonly ColumnId[];
  /** Undefined in a sheet without rows. */
  readonly selection: Selection | undefined;
  readonly editing: Editing | undefined;
  /** A plan that is being looked at before it is applied. */
  readonly preview: Previewed | undefined;
  readonly notice: Notice | undefined;
  readonly panel: PanelName | undefined;
}

/** The sheet of one open rig as one person sees it: no React, no DOM. */
export interface Sheet {
  readonly store: RigStore;
  readonly makeId: MakeId;
  state(): SheetState;
  subscribe(listen: () => void): () => void;
  ground(): Ground;
  select(selection: Selection | undefined): void;
  setView(view: View): void;
  setColumns(settings: ColumnSettings): void;
  set(part: Partial<Pick<SheetState, 'editing' | 'preview' | 'notice' | 'panel'>>): void;
  /** Follows the rig from now on; the answer stops that. */
  open(): () => void;
}

/** Keeps how a person looks at the sheet on this device. */
export interface ViewKeeper {
  load(): unknown;
  save(kept: unknown): void;
}

const FIRST_VIEW: View = Object.freeze({ grouping: 'position', sort: null, filter: EVERYTHING });

export function createSheet(store: RigStore, makeId: MakeId, keeper: ViewKeeper): Sheet {
  const listeners = createListeners();
  const isFlagged = (id: Parameters<RigStore['findingsOf']>[0]) => store.findingsOf(id).length > 0;
  const settings = readColumnSettings(keeper.load());
  let order: RowOrder = rowOrder(store.rig(), FIRST_VIEW, isFlagged);
  let state: SheetState = {
    view: FIRST_VIEW,
    layout: order.layout,
    settings,
    columns: visibleColumns(settings, mostBreaks(store.rig())),
    selection: undefined,
    editing: undefined,
    preview: undefined,
    notice: undefined,
    panel: undefined,
  };
  let line = 0;

  const put = (part: Partial<SheetState>) => {
    state = { ...state, ...part };
    listeners.tell();
  };
  const ground = (): Ground => ({ order, columns: state.columns });
  // Who only opened the sheet is in no cell yet as far as others see.
  let seen = false;
  const place = (selection: Selection | undefined) => {
    const before = state.selection?.cursor;
    const now = selection?.cursor;
    if (now) line = Math.max(0, lineOf(order, now.row));
    if (selection !== state.selection) put({ selection });
    if (seen && (before?.row !== now?.row || before?.column !== now?.column)) {
      store.setWhere(now ? { fixture: now.row, field: now.column } : null);
    }
  };
  const keepCursor = () => place(mendSelection(ground(), state.selection, line));
  const select = (selection: Selection | undefined) => {
    seen = true;
    place(selection);
  };
  const setOrder = (next: RowOrder, part: Partial<SheetState>) => {
    order = next;
    if (next.layout === state.layout && Object.keys(part).length === 0) return;
    put({ ...part, layout: next.layout });
    keepCursor();
  };

  const follow = (step: RigStep) => {
    const next = advanceOrder(order, step.rig, step.changes, step);
    setOrder(next, step.remodelled ? { columns: visibleColumns(state.settings, mostBreaks(step.rig)) } : {});
    const { editing } = state;
    const gone = editing && step.changes.some(({ id, after }) => id === editing.cell.row && after === undefined);
    if (gone) put({ editing: undefined, notice: { kind: 'row-gone', text: editing.text } });
  };
  const catchUp = () => {
    if (order.rig === store.rig()) return;
    const columns = visibleColumns(state.settings, mostBreaks(store.rig()));
    setOrder(rowOrder(store.rig(), state.view, isFlagged), { columns });
  };
  keepCursor();

  return {
    store,
    makeId,
    state: () => state,
    subscribe: listeners.add,
    ground,
    select,
    setView: (view) => setOrder(rowOrder(store.rig(), view, isFlagged), { view }),
    setColumns(next) {
      keeper.save(next);
      put({ settings: next, columns: visibleColumns(next, mostBreaks(store.rig())) });
      keepCursor();
    },
    set: put,
    open() {
      catchUp();
      const stop = store.onStep(follow);
      return () => {
        stop();
        store.setWhere(null);
      };
    },
  };
}
