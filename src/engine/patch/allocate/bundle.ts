import type { AllocateOptions } from './allocate-options.ts';
import type { Bin } from './bin.ts';
import type { Block } from './block.ts';
import { packBins } from './pack-bins.ts';

/** Blocks that lie end to end on the grid, counted in cells of it; what is left of the last cells is spare. */
export interface Bundle {
  readonly blocks: readonly Block[];
  readonly cells: number;
}

/** How a universe is divided: the cells of the grid that lie in it whole. */
export interface Cells {
  readonly grid: number;
  readonly perUniverse: number;
}

export const cellsOf = (slots: number, grid: number) => Math.ceil(slots / grid);

export const loose = (block: Block, grid: number): Bundle => ({ blocks: [block], cells: cellsOf(block.slots, grid) });

export interface Bundled {
  readonly bundles: readonly Bundle[];
  /** Groups that no universe holds whole, as written. */
  readonly split: readonly string[];
  /** For the lower bound: groups that one universe holds, and the single blocks of the others. */
  readonly least: readonly number[];
}

/** Each group as one bundle, or as few bundles as it takes; what has no group by itself. In the order of the blocks. */
export function bundle(blocks: readonly Block[], cells: Cells, options: AllocateOptions): Bundled {
  const groups = new Map<string, Block[]>();
  for (const [at, block] of blocks.entries()) {
    const key = block.group === '' ? `loose ${at}` : `group ${block.group}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [block]);
    else group.push(block);
  }
  const steps = Math.floor(options.steps / (groups.size + 1));
  const bundles: Bundle[] = [];
  const split: string[] = [];
  const least: number[] = [];
  for (const group of groups.values()) {
    const parts = partsOf(group, cells, steps).map((part) => withSpare(part, cells, options));
    bundles.push(...parts);
    if (parts.length > 1) split.push(nameOf(group, options));
    if (parts.length === 1) least.push(parts[0]?.cells ?? 0);
    else for (const block of group) least.push(cellsOf(block.slots, cells.grid));
  }
  return { bundles, split, least };
}

/** A group as its first unit writes it. */
export function nameOf([block]: readonly Block[], { together }: AllocateOptions): string {
  const { position = '', run = '', type = '' } = block?.party.lead ?? {};
  return (together === 'by-position' ? position : together === 'by-run' ? run : type).trim();
}

/** A group in its order where that takes no more universes than any other order would, as it was found to pack otherwise. */
function partsOf(group: readonly Block[], { grid, perUniverse }: Cells, steps: number): readonly (readonly Block[])[] {
  const widths = group.map(({ slots }) => cellsOf(slots, grid));
  const straight = nextFit(group, widths, perUniverse);
  if (straight.length === 1) return straight;
  const { bins, opened } = packBins({ widths, rooms: [], capacity: perUniverse }, steps);
  return straight.length <= opened ? straight : deal(bins, group, ({ slots }) => cellsOf(slots, grid));
}

function nextFit(group: readonly Block[], widths: readonly number[], capacity: number): readonly (readonly Block[])[] {
  const parts: Block[][] = [];
  let left = 0;
  for (const [at, block] of group.entries()) {
    const width = widths[at] as number;
    if (width > left) {
      parts.push([]);
      left = capacity;
    }
    parts[parts.length - 1]?.push(block);
    left -= width;
  }
  return parts;
}

function withSpare(blocks: readonly Block[], { grid, perUniverse }: Cells, options: AllocateOptions): Bundle {
  const last = blocks[blocks.length - 1];
  const before = blocks.slice(0, -1).reduce((total, { slots }) => total + cellsOf(slots, grid), 0);
  const spare = last === undefined || last.group === '' ? 0 : options.spareAfterGroup;
  const cells = before + cellsOf((last?.slots ?? 0) + spare, grid);
  return { blocks, cells: Math.min(cells, perUniverse) };
}

/** The items that lie in each bin, for a packing of their widths: of items alike the first go into the first bins. */
export function deal<Item>(
  bins: readonly Bin[],
  items: readonly Item[],
  widthOf: (item: Item) => number,
): readonly (readonly Item[])[] {
  const queues = new Map<number, number[]>();
  for (const [at, item] of items.entries()) {
    const queue = queues.get(widthOf(item));
    if (queue === undefined) queues.set(widthOf(item), [at]);
    else queue.push(at);
  }
  const next = new Map<number, number>();
  return bins.map(({ widths }) => {
    const places = widths.map((width) => {
      const at = next.get(width) ?? 0;
      next.set(width, at + 1);
      return queues.get(width)?.[at] as number;
    });
    return places.sort((a, b) => a - b).map((place) => items[place] as Item);
  });
}
