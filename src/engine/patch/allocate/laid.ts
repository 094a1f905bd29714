import { type Absolute, absolute, type Universe } from '../../model/address.ts';
import type { Edit } from '../../model/edit.ts';
import type { FixtureId } from '../../model/ids.ts';
import { addressEdits } from '../chosen.ts';
import type { Block } from './block.ts';

/** A block and the slot of its universe at which it begins. */
export interface Laid {
  readonly block: Block;
  readonly universe: Universe;
  readonly first: number;
}

/** The edits that put every unit of the blocks where they were laid, in the order of the blocks. */
export function editsOf(blocks: readonly Block[], laid: readonly Laid[]): readonly Edit[] {
  const starts = new Map<FixtureId, (Absolute | null)[]>();
  for (const { block, universe, first } of laid) {
    const addresses = starts.get(block.party.lead.id) ?? [];
    for (const { part, from } of block.parts) {
      while (addresses.length <= part) addresses.push(null);
      addresses[part] = absolute(universe, first + from);
    }
    starts.set(block.party.lead.id, addresses);
  }
  const parties = new Set(blocks.map(({ party }) => party));
  return [...parties].flatMap(({ lead, fixtures }) =>
    fixtures.flatMap((fixture) => addressEdits(fixture, starts.get(lead.id) ?? [])),
  );
}
