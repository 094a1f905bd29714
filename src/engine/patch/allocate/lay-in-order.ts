import type { Block } from './block.ts';
import { cellsOf } from './bundle.ts';
import type { Ground } from './ground.ts';
import type { Laid } from './laid.ts';

/** Lays blocks down in their order at ascending addresses, each at the first room; or the block for which there is none. */
export function layInOrder(blocks: readonly Block[], ground: Ground, grid: number): readonly Laid[] | Block {
  const laid: Laid[] = [];
  const stretches = ground.everywhere();
  let at = stretches.next();
  let from = 0;
  for (const block of blocks) {
    while (!at.done && at.value.slots - from < block.slots) {
      at = stretches.next();
      from = 0;
    }
    if (at.done) return block;
    const { universe, first } = at.value;
    laid.push({ block, universe, first: first + from });
    from += cellsOf(block.slots, grid) * grid;
  }
  return laid;
}
