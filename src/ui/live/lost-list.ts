import type { LostCell, LostRow } from '#document/history/lost-cells.ts';
import { createListeners } from './listeners.ts';

/** A value of mine that gave way to one set at the same time. */
export interface LostValue extends LostCell {
  readonly kind: 'value';
  /** Who set the other, as far as one can see who is in the cell. */
  readonly by: string | undefined;
}

/** A unit somebody removed while I was writing into its row. */
export interface LostUnit extends LostRow {
  readonly kind: 'unit';
}

export type Lost = LostValue | LostUnit;

/** What a person lost and has not answered yet; the latest of one cell or row stands for those before it. */
export interface LostList {
  all(): readonly Lost[];
  add(lost: readonly Lost[]): void;
  drop(lost: Lost): void;
  /** Names who set the other value, where nobody was seen in the cell yet. `who` answers undefined for nobody. */
  name(who: (value: LostValue) => string | undefined): void;
  onChange(listen: () => void): () => void;
}

export function createLostList(): LostList {
  const listeners = createListeners();
  let all: readonly Lost[] = [];
  return {
    all: () => all,
    add(lost) {
      const isNewer = (old: Lost) => lost.some((one) => standsFor(one, old));
      all = [...all.filter((old) => !isNewer(old)), ...lost];
      listeners.tell();
    },
    drop(lost) {
      all = all.filter((other) => other !== lost);
      listeners.tell();
    },
    name(who) {
      const named = all.map((one) => withName(one, who));
      if (named.every((one, at) => one === all[at])) return;
      all = named;
      listeners.tell();
    },
    onChange: listeners.add,
  };
}

function withName(lost: Lost, who: (value: LostValue) => string | undefined): Lost {
  const by = lost.kind === 'value' && lost.by === undefined ? who(lost) : undefined;
  return by === undefined ? lost : ({ ...lost, by } as LostValue);
}

/** A row that is gone speaks for every cell of it. */
function standsFor(newer: Lost, old: Lost): boolean {
  if (newer.fixture !== old.fixture) return false;
  return newer.kind === 'unit' || (old.kind === 'value' && newer.field === old.field);
}
