import { getRow } from '#base/table.ts';
import { claimsOf } from '#engine/address/claim.ts';
import { parseAddress } from '#engine/address/notation.ts';
import { type Absolute, absolute } from '#engine/model/address.ts';
import { modeOf } from '#engine/model/find-mode.ts';
import type { Fixture } from '#engine/model/fixture.ts';
import { type FixtureId, foldName } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';
import { rowText } from '../live/rows/is-shown.ts';
import type { RowOrder } from '../live/rows/row-order.ts';

/** What a person looks for, read once: text, and the channel or address it may be. */
interface Sought {
  readonly text: string;
  readonly channel: number | undefined;
  readonly address: Absolute | undefined;
}

const NOT_FOUND = Infinity;

/**
 * The rows a text may mean, the likeliest first: a channel of that number, a unit of that name (`LX 1 5`, `5`), a start
 * address in any notation, a unit that holds that slot, and then any cell with the text in it. Within each, as shown.
 */
export function findRows({ rig, layout }: RowOrder, text: string): readonly FixtureId[] {
  const sought = read(text);
  if (sought.text === '') return [];
  const ranked: { readonly id: FixtureId; readonly rank: number }[] = [];
  for (const { ids } of layout.groups) {
    for (const id of ids) {
      const fixture = getRow(rig.fixtures, id);
      const rank = fixture === undefined ? NOT_FOUND : rankOf(rig, fixture, sought);
      if (rank !== NOT_FOUND) ranked.push({ id, rank });
    }
  }
  return ranked.sort((a, b) => a.rank - b.rank).map(({ id }) => id);
}

function read(text: string): Sought {
  const address = parseAddress(text);
  return {
    text: foldName(text.replaceAll('·', ' ')),
    channel: /^\s*\d{1,9}\s*$/.test(text) ? Number(text) : undefined,
    address: address.ok ? address.value : undefined,
  };
}

function rankOf(rig: Rig, fixture: Fixture, { text, channel, address }: Sought): number {
  if (channel !== undefined && fixture.channel === channel) return 0;
  if (foldName(`${fixture.position} ${fixture.unit}`) === text) return 1;
  if (foldName(fixture.unit) === text) return 2;
  if (address !== undefined) {
    if (fixture.addresses.includes(address)) return 3;
    if (holds(rig, fixture, address)) return 4;
  }
  if (foldName(`${fixture.position} ${fixture.unit}`).startsWith(text)) return 5;
  const isNumber = channel !== undefined || address !== undefined;
  if (isNumber) return NOT_FOUND;
  return rowText(rig, fixture).includes(text) ? 6 : NOT_FOUND;
}

function holds(rig: Rig, fixture: Fixture, address: Absolute): boolean {
  return claimsOf(fixture, modeOf(rig, fixture)).some(
    ({ universe, first, last }) => absolute(universe, first) <= address && address <= absolute(universe, last),
  );
}
