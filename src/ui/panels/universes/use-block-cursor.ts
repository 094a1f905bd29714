import { type FocusEvent, type RefObject, useCallback, useEffect, useRef, useState } from 'react';
import { getRow } from '#base/table.ts';
import { type Universe, universeOf } from '#engine/model/address.ts';
import { chosenUnits } from '../../live/chosen-units.ts';
import type { RigStore } from '../../live/rig-store.ts';
import { type BlockCursor, blockKey, cursorSeat, type Ribbons } from '../../universes/block-cursor.ts';

/** The block that Tab comes to, and the focus that goes along with it. */
export interface BlockFocus {
  readonly cursor: BlockCursor | undefined;
  readonly here: ReturnType<typeof cursorSeat>;
  /** The universe to scroll to: only keys ask for that, a pointer sees where it is. */
  readonly lead: Universe | undefined;
  readonly go: (to: BlockCursor) => void;
  /** Goes there and leaves the focus where it is. */
  readonly lookAt: (to: BlockCursor) => void;
  /** Brings the focus to the block of the cursor, in whatever universe it sits by now. */
  readonly follow: () => void;
  readonly onFocus: (event: FocusEvent) => void;
}

export function useBlockCursor(store: RigStore, ribbons: Ribbons, frame: RefObject<HTMLElement | null>): BlockFocus {
  const [cursor, setCursor] = useState(() => blockOfUnit(store));
  const [lead, setLead] = useState(cursor?.universe);
  const wanted = useRef(false);
  const here = cursorSeat(cursor, ribbons);
  useEffect(() => {
    if (!wanted.current || here === undefined) return;
    const block = frame.current?.querySelector<HTMLElement>(`[data-block="${CSS.escape(blockKey(here.seat))}"]`);
    if (!block) return;
    wanted.current = false;
    block.focus({ preventScroll: true });
  });
  const lookAt = useCallback((to: BlockCursor) => {
    setCursor(to);
    setLead(to.universe);
  }, []);
  const go = useCallback(
    (to: BlockCursor) => {
      wanted.current = true;
      lookAt(to);
    },
    [lookAt],
  );
  const follow = () => {
    if (here === undefined) return;
    const { fixture, part } = here.seat;
    const start = getRow(store.rig().fixtures, fixture)?.addresses[part - 1];
    go({ universe: start ? universeOf(start) : here.universe, key: blockKey(here.seat) });
  };
  const onFocus = ({ target }: FocusEvent) => {
    if (!(target instanceof HTMLElement)) return;
    const universe = target.closest<HTMLElement>('[data-universe]')?.dataset.universe;
    const key = target.dataset.block;
    if (universe === undefined || key === undefined) return;
    setCursor({ universe: Number(universe) as Universe, key });
    setLead(undefined);
  };
  return { cursor, here, lead, go, lookAt, follow, onFocus };
}

/** The first block of the unit one was at last, on this page or another. */
function blockOfUnit(store: RigStore): BlockCursor | undefined {
  const [id] = chosenUnits(store).ids();
  const addresses = (id && getRow(store.rig().fixtures, id)?.addresses) ?? [];
  const part = addresses.findIndex((at) => at !== null);
  const start = addresses[part] ?? null;
  if (id === undefined || start === null) return undefined;
  return { universe: universeOf(start), key: blockKey({ fixture: id, part: part + 1 }) };
}
