import type { FixtureType, Part, TypeMode } from '../model/fixture-type.ts';

/** One place in which a part stands in a mode, and where its slots start. */
export interface Cell {
  /** The copy it came from; empty for a part of the body. */
  readonly name: string;
  /** Slots before its first one, per break; a break that is missing here has none. */
  readonly before: ReadonlyMap<number, number>;
  /** The break that channels of break `of-copy` are in; null in the body. */
  readonly ownBreak: number | null;
}

/** The most cells a mode is opened up to: no more fit a unit's breaks, and copies of copies can ask for billions. */
const CELL_LIMIT = 4 * 512;

const BODY: Cell = Object.freeze({ name: '', before: new Map<number, number>(), ownBreak: null });

/**
 * Every place each part stands in: a part of the body in one, a part under a copied one in as many as there are copies of
 * it. Total: copies of themselves, of nothing, and beyond the limit are left out. Source: GDTF, DMXMode, GeometryReference.
 */
export function cellsOf(type: FixtureType, mode: TypeMode): ReadonlyMap<string, readonly Cell[]> {
  const children = byParent(type.parts);
  const cells = new Map<string, Cell[]>();
  let count = 0;
  const walk = (part: Part, cell: Cell, above: readonly string[]): void => {
    if (count >= CELL_LIMIT) return;
    count += 1;
    const known = cells.get(part.name);
    if (known === undefined) cells.set(part.name, [cell]);
    else known.push(cell);
    const original = part.copy === null ? undefined : topPart(type.parts, part.copy.of);
    if (original !== undefined && !above.includes(original.name)) {
      walk(original, cellOf(part, cell), [...above, original.name]);
    }
    for (const child of children.get(part.name) ?? []) walk(child, cell, above);
  };
  const root = topPart(type.parts, mode.root);
  if (root !== undefined) walk(root, BODY, [root.name]);
  return cells;
}

const topPart = (parts: readonly Part[], name: string) =>
  parts.find((part) => part.within === null && part.name === name);

function byParent(parts: readonly Part[]): ReadonlyMap<string, readonly Part[]> {
  const children = new Map<string, Part[]>();
  for (const part of parts) {
    if (part.within === null) continue;
    const known = children.get(part.within);
    if (known === undefined) children.set(part.within, [part]);
    else known.push(part);
  }
  return children;
}

/** A copy within a copied part starts from where that one does. */
function cellOf(part: Part, outer: Cell): Cell {
  const before = new Map(outer.before);
  for (const start of part.copy?.starts ?? []) {
    before.set(start.break, (outer.before.get(start.break) ?? 0) + start.slot - 1);
  }
  const name = outer.name === '' ? part.name : `${outer.name} ${part.name}`;
  return { name, before, ownBreak: part.copy?.starts.at(-1)?.break ?? 1 };
}
