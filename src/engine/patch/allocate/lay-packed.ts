import { SLOTS, type Universe } from '../../model/address.ts';
import type { AllocateOptions } from './allocate-options.ts';
import type { Block } from './block.ts';
import { type Bundle, type Bundled, bundle, type Cells, cellsOf, deal, loose, nameOf } from './bundle.ts';
import type { Ground, Stretch } from './ground.ts';
import type { Laid } from './laid.ts';
import { boundsBeside, fractionsBeside, type ProvenBounds } from './lower-bounds.ts';
import { packBins } from './pack-bins.ts';

export interface Packed {
  readonly laid: readonly Laid[];
  readonly split: readonly string[];
  readonly bounds: ProvenBounds;
  /** What best-fit-decreasing would open. */
  readonly bestFit: number;
}

/** Lays blocks down so that few universes are opened; or the block for which there is no room. */
export function layPacked(blocks: readonly Block[], ground: Ground, options: AllocateOptions): Packed | Block {
  const { grid, spareAtEnd } = options;
  const cells: Cells = { grid, perUniverse: Math.floor((SLOTS - spareAtEnd) / grid) };
  // A block that only fits where the grid leaves a piece of a cell over has a universe to itself.
  const wide = blocks.filter(({ slots }) => cellsOf(slots, grid) > cells.perUniverse);
  const bundled = bundle(
    blocks.filter(({ slots }) => cellsOf(slots, grid) <= cells.perUniverse),
    cells,
    options,
  );
  const packed = pack({ wide, bundled, cells }, ground, options);
  if ('laid' in packed || bundled.bundles.every(({ blocks: { length } }) => length === 1)) return packed;
  // There are too few universes for whole groups: kept together no longer, the units may still have room.
  const single = pack({ wide, bundled: unbundled(bundled, grid), cells }, ground, options);
  return 'laid' in single ? { ...single, split: groupNames(bundled, options) } : single;
}

function groupNames({ bundles }: Bundled, options: AllocateOptions): readonly string[] {
  const names = new Map<string, string>();
  for (const { blocks } of bundles) {
    const group = blocks[0]?.group ?? '';
    if (group !== '' && !names.has(group)) names.set(group, nameOf(blocks, options));
  }
  return [...names.values()];
}

function unbundled({ bundles }: Bundled, grid: number): Bundled {
  const single = bundles.flatMap(({ blocks }) => blocks.map((block) => loose(block, grid)));
  return { bundles: single, split: [], least: single.map(({ cells }) => cells) };
}

interface Load {
  readonly wide: readonly Block[];
  readonly bundled: Bundled;
  readonly cells: Cells;
}

function pack({ wide, bundled, cells }: Load, ground: Ground, options: AllocateOptions): Packed | Block {
  const { grid, perUniverse } = cells;
  const { bundles, split, least } = bundled;
  const widthOf = (each: Bundle) => each.cells;
  const rooms = ground.rooms().filter(({ slots }) => slots >= grid);
  const job = {
    widths: bundles.map(widthOf),
    rooms: rooms.map(({ slots }) => Math.min(perUniverse, Math.floor(slots / grid))),
    capacity: perUniverse,
  };
  const packing = packBins(job, options.steps);
  const { bins, bestFit } = packing;
  const dealt = deal(bins, bundles, widthOf);
  const laid = rooms.flatMap((room, at) => layIn(room, dealt[at] ?? [], grid));
  const rank = new Map<Block, number>(
    [...bundles.flatMap(({ blocks }) => blocks), ...wide].map((block, at) => [block, at]),
  );
  const opened = [...dealt.slice(rooms.length), ...wide.map((block) => [loose(block, grid)])];
  opened.sort((a, b) => rankOf(a, rank) - rankOf(b, rank));
  const unused = ground.unused();
  for (const bin of opened) {
    const { value: universe } = unused.next() as { value: Universe | undefined };
    if (universe === undefined) return bin[0]?.blocks[0] as Block;
    laid.push(...layIn({ universe, first: 1 }, bin, grid));
  }
  const widths = [...least, ...wide.map(({ slots }) => cellsOf(slots, grid))];
  // The same question as was packed, if nothing is kept together and nobody else is there.
  const isSame = rooms.length + wide.length === 0 && bundles.every(({ blocks: { length } }) => length === 1);
  const bounds = isSame ? packing.bounds : boundsOf(widths, ground, { options, opened: opened.length });
  return { laid, split, bounds, bestFit: bestFit + wide.length };
}

const rankOf = (bin: readonly Bundle[], rank: ReadonlyMap<Block, number>) =>
  Math.min(...bin.map(({ blocks: [one] }) => (one === undefined ? 0 : (rank.get(one) ?? 0))));

/** The bundles of a bin end to end, from where the room begins. */
function layIn({ universe, first }: Pick<Stretch, 'universe' | 'first'>, bin: readonly Bundle[], grid: number): Laid[] {
  const laid: Laid[] = [];
  let from = first;
  for (const { blocks, cells } of bin) {
    let at = from;
    for (const block of blocks) {
      laid.push({ block, universe, first: at });
      at += cellsOf(block.slots, grid) * grid;
    }
    from += cells * grid;
  }
  return laid;
}

/** Counted in cells of the grid with the last piece of one as a whole: no placing of these widths opens fewer than is proven. */
export function boundsOf(
  widths: readonly number[],
  ground: Ground,
  { options: { grid, spareAtEnd, steps }, opened }: { readonly options: AllocateOptions; readonly opened: number },
): ProvenBounds {
  const rooms = ground.rooms().map(({ slots }) => cellsOf(slots, grid));
  const job = { widths, rooms, capacity: cellsOf(SLOTS - spareAtEnd, grid) };
  const bounds = boundsBeside(job.widths, job.rooms, job.capacity);
  // Only asked where there is something left to prove.
  const further = opened > bounds.l2 ? fractionsBeside(job, { steps: Math.floor(steps / 4) }).bound : 0;
  return { ...bounds, proven: Math.max(bounds.l2, further) };
}
