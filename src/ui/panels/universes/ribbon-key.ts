import type { KeyboardEvent } from 'react';
import { absolute } from '#engine/model/address.ts';
import { type BlockCursor, blockKey, blockOfKey, cursorSeat, type Ribbons } from '../../universes/block-cursor.ts';
import { aimOfKey, type Carry } from '../../universes/carry.ts';

export interface RibbonKeys {
  readonly carry: Carry;
  readonly ribbons: Ribbons;
  readonly cursor: BlockCursor | undefined;
  readonly writable: boolean;
  readonly onGo: (cursor: BlockCursor) => void;
  readonly onPut: () => void;
}

/** What the keys do on a block: go to another, pick it up, carry it, put it down. True when the key was one of these. */
export function ribbonKey(event: KeyboardEvent, keys: RibbonKeys): boolean {
  if (event.altKey || event.metaKey) return false;
  return keys.carry.state().carried === undefined ? keyAtRest(event, keys) : keyCarrying(event, keys);
}

function keyAtRest(event: KeyboardEvent, { carry, ribbons, cursor, writable, onGo, onPut }: RibbonKeys): boolean {
  const here = cursorSeat(cursor, ribbons);
  if (here === undefined) return false;
  if (event.ctrlKey) {
    if (event.key.toLowerCase() !== 'z' || event.shiftKey) return false;
    carry.takeBack();
    onPut();
    return true;
  }
  if (isPick(event.key) && (writable || event.key !== 'Enter')) {
    carry.pickUp(here.seat, absolute(here.universe, here.seat.first), 'keys');
    return true;
  }
  const to = blockOfKey(event.key, { universe: here.universe, key: blockKey(here.seat) }, ribbons);
  if (to !== undefined) onGo(to);
  return to !== undefined;
}

function keyCarrying(event: KeyboardEvent, { carry, ribbons, onPut }: RibbonKeys): boolean {
  const { carried } = carry.state();
  if (carried === undefined || event.key === 'Tab') {
    carry.leave();
    return false;
  }
  if (event.key === 'Escape') carry.leave();
  else if (event.key === 'Enter') {
    carry.put();
    onPut();
  } else {
    const at = aimOfKey(event, carried.at, ribbons.universes);
    if (at !== undefined) carry.aim(at);
  }
  // Every other key would do something to a block that is on its way.
  return true;
}

const isPick = (key: string) => key === 'Enter' || key === 'm' || key === 'M';
