import type { LostCell } from '#document/history/lost-cells.ts';
import { createListeners } from './listeners.ts';

/** A value of mine that gave way to one set at the same time. */
export interface LostValue extends LostCell {
  /** Who set the other, as far as one can see who is in the cell. */
  readonly by: string | undefined;
}

/** The lost values a person has not answered yet; the latest of one cell stands for those before it. */
export interface LostList {
  all(): readonly LostValue[];
  add(values: readonly LostValue[]): void;
  drop(value: LostValue): void;
  /** Names who set the other value, where nobody was seen in the cell yet. `who` answers undefined for nobody. */
  name(who: (value: LostValue) => string | undefined): void;
  onChange(listen: () => void): () => void;
}

export function createLostList(): LostList {
  const listeners = createListeners();
  let all: readonly LostValue[] = [];
  return {
    all: () => all,
    add(values) {
      const isNewer = (old: LostValue) => values.some((value) => sameCell(value, old));
      all = [...all.filter((old) => !isNewer(old)), ...values];
      listeners.tell();
    },
    drop(value) {
      all = all.filter((other) => other !== value);
      listeners.tell();
    },
    name(who) {
      if (all.every(({ by }) => by !== undefined)) return;
      all = all.map((value) => (value.by === undefined ? named(value, who(value)) : value));
      listeners.tell();
    },
    onChange: listeners.add,
  };
}

const named = (value: LostValue, by: string | undefined): LostValue => (by === undefined ? value : { ...value, by });

const sameCell = (a: LostValue, b: LostValue) => a.fixture === b.fixture && a.field === b.field;
