import type { MakeId } from '#base/random-id.ts';
import type { DraftMode } from '#engine/draft/draft.ts';
import { modeOf } from '#engine/draft/draft-plans.ts';
import type { DraftPlace } from '#engine/draft/draft-trouble.ts';
import type { DraftApplyRefusal, DraftStore } from '../live/draft-store.ts';
import { createListeners } from '../live/listeners.ts';
import { type ChartCell, type ChartSelection, mendSelection, selectCell } from './chart/chart-selection.ts';

/** A cell that is open for typing. */
export interface OpenCell {
  readonly cell: ChartCell;
  /** What stands in the field now. */
  readonly text: string;
  /** `replace`: typing opened it, and arrows leave it; `inside`: arrows move within the text. */
  readonly how: 'replace' | 'inside';
}

/** Something to tell the person; `words/` says it. */
type DeskNotice =
  | { readonly kind: 'refused'; readonly refusal: DraftApplyRefusal }
  | { readonly kind: 'taken'; readonly rows: number; readonly modes: number; readonly guesses: number }
  | { readonly kind: 'left-out'; readonly cells: number }
  | { readonly kind: 'confirmed'; readonly left: number }
  | { readonly kind: 'row-gone'; readonly text: string }
  | { readonly kind: 'undone' | 'redone' | 'nothing-to-undo' | 'nothing-to-redo' | 'no-trouble' | 'no-guess' }
  | { readonly kind: 'not-renumbered' };

/** A window over the screen. */
type DeskWindow =
  | { readonly kind: 'paste'; readonly text: string }
  | { readonly kind: 'repeat' | 'publish' | 'drop' | 'keys' | 'remove-mode' | 'open-chart' | 'renumber' };

/** What one person has before them. */
export interface DeskState {
  /** The mode they look at; undefined in a draft without modes. */
  readonly mode: string | undefined;
  readonly selection: ChartSelection | undefined;
  readonly open: OpenCell | undefined;
  readonly window: DeskWindow | undefined;
  readonly notice: DeskNotice | undefined;
}

/** One person's view of an open draft: no React, no DOM. */
export interface Desk {
  readonly store: DraftStore;
  readonly makeId: MakeId;
  state(): DeskState;
  subscribe(listen: () => void): () => void;
  /** The mode they look at. */
  mode(): DraftMode | undefined;
  chooseMode(mode: string): void;
  select(selection: ChartSelection | undefined): void;
  set(part: Partial<Pick<DeskState, 'open' | 'window' | 'notice'>>): void;
  /** Goes to where something is wrong; false when that is no cell of a chart. */
  goTo(place: DraftPlace): boolean;
  /** Follows the draft from now on; the answer stops that. */
  follow(): () => void;
}

export function createDesk(store: DraftStore, makeId: MakeId): Desk {
  const listeners = createListeners();
  let state: DeskState = {
    mode: undefined,
    selection: undefined,
    open: undefined,
    window: undefined,
    notice: undefined,
  };
  let line = 0;
  const put = (part: Partial<DeskState>) => {
    state = { ...state, ...part };
    listeners.tell();
  };
  const mode = () => {
    const { modes } = store.reading().draft;
    return state.mode === undefined ? undefined : modes.find((each) => each.id === state.mode);
  };
  const rows = () => mode()?.rows.map((row) => row.id) ?? [];
  const place = (selection: ChartSelection | undefined) => {
    if (selection === state.selection) return;
    if (selection !== undefined) line = Math.max(0, rows().indexOf(selection.cursor.row));
    put({ selection });
  };
  const tellWhere = () => {
    const cell = state.selection?.cursor;
    store.setWhere(cell === undefined ? null : { fixture: cell.row, field: cell.column });
  };
  const keepUp = () => {
    const { modes } = store.reading().draft;
    if (mode() === undefined) put({ mode: modes[0]?.id });
    const { open } = state;
    if (open !== undefined && !rows().includes(open.cell.row)) {
      put({ open: undefined, notice: { kind: 'row-gone', text: open.text } });
    }
    place(mendSelection(rows(), state.selection, line));
    listeners.tell();
  };
  const desk: Desk = {
    store,
    makeId,
    state: () => state,
    subscribe: listeners.add,
    mode,
    chooseMode(id) {
      if (id === state.mode) return;
      put({ mode: id, open: undefined, selection: undefined });
      place(mendSelection(rows(), undefined, 0));
    },
    select(selection) {
      place(selection);
      tellWhere();
    },
    set: put,
    goTo(where) {
      if (where.of === 'facts' || where.of === 'type') return false;
      if (modeOf(store.reading().draft, where.mode) === undefined) return false;
      desk.chooseMode(where.mode);
      if (where.of === 'mode') return false;
      const row = where.of === 'row' ? where.row : mode()?.rows.find((each) => each.repeat === where.repeat)?.id;
      if (row === undefined || !rows().includes(row)) return false;
      const column = where.of === 'repeat' || where.field === 'order' ? 'repeat' : where.field;
      desk.select(selectCell({ row, column }));
      return true;
    },
    follow() {
      keepUp();
      const stop = store.subscribe(keepUp);
      return () => {
        stop();
        store.setWhere(null);
      };
    },
  };
  return desk;
}
