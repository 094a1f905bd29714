import { type KeyboardEvent, useCallback, useMemo, useRef, useState, useSyncExternalStore } from 'react';
import { getRow } from '#base/table.ts';
import { absolute, LAST_UNIVERSE, type Universe, universeOf } from '#engine/model/address.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';
import { RIBBONS_WORDS as words } from '#words/ribbons.ts';
import { useHeight } from '../../grid/use-height.ts';
import { chosenUnits } from '../../live/chosen-units.ts';
import type { RigStore } from '../../live/rig-store.ts';
import { blockKey } from '../../universes/block-cursor.ts';
import { useWidth } from '../../universes/use-width.ts';
import { CarryLine } from './carry-line.tsx';
import { ribbonKey } from './ribbon-key.ts';
import { RIBBON_COLUMNS, RibbonRow } from './ribbon-row.tsx';
import { UnitPanel } from './unit-panel.tsx';
import type { UniverseChoice } from './universe-list.tsx';
import { useBlockCursor } from './use-block-cursor.ts';
import { useCarrying } from './use-carrying.ts';
import { useDrag } from './use-drag.ts';
import { useFixedLines } from './use-fixed-lines.ts';

export interface RibbonListProps {
  readonly store: RigStore;
  readonly rigId: string;
  readonly rig: Rig;
  readonly choices: readonly UniverseChoice[];
  /** Goes to the slots of a universe. */
  readonly onSlots: (universe: Universe) => void;
}

const LINE = 72;

/** Every universe as a ribbon, and one more to carry blocks to. Blocks are one stop of Tab; mouse and keys carry them. */
export function RibbonList({ store, rigId, rig, choices, onSlots }: RibbonListProps) {
  const { carry, carried, landing, othersAt, tap } = useCarrying(store, rig);
  const writable = useSyncExternalStore(store.subscribeLink, store.canEdit);
  const universes = useMemo(() => withNext(choices, writable ? 'editor' : 'reader'), [choices, writable]);
  const [open, setOpen] = useState<FixtureId>();
  const openUnit = useCallback(
    (id: FixtureId) => {
      chosenUnits(store).choose([id]);
      setOpen(id);
    },
    [store],
  );
  const scroller = useRef<HTMLDivElement>(null);
  const probe = useRef<HTMLDivElement>(null);
  const line = useHeight(probe, LINE);
  const strip = useRef<HTMLDivElement>(null);
  const length = useWidth(strip);
  const ribbons = { universes, of: (universe: Universe) => store.occupancy().of(universe) };
  const { cursor, here, lead, go, lookAt, follow, onFocus } = useBlockCursor(store, ribbons, scroller);
  const ahead = carried?.by === 'keys' ? universeOf(carried.at) : lead;
  const { items, total } = useFixedLines(scroller, {
    count: universes.length,
    at: ahead === undefined ? -1 : universes.indexOf(ahead),
    held: here === undefined ? -1 : universes.indexOf(here.universe),
    height: line,
    head: 0,
  });
  const grab = useDrag({ carry, scroller, universes, line, onPut: follow });
  const press = (event: KeyboardEvent) => {
    if (!(event.target instanceof HTMLElement) || event.target.dataset.block === undefined) return;
    if (ribbonKey(event, { carry, ribbons, cursor, writable, onGo: go, onPut: follow })) event.preventDefault();
  };
  const close = () => {
    setOpen(undefined);
    follow();
  };
  const carryOpen = () => {
    if (here !== undefined && carry.pickUp(here.seat, absolute(here.universe, here.seat.first), 'finger')) close();
  };
  const label = useCallback(
    (universe: Universe, text: string) => {
      const edit = { kind: 'set-universe', universe, label: text.trim() } as const;
      const written = store.apply({ name: 'set-universe', edits: [edit] });
      if (!written.ok) carry.refused(written.error);
    },
    [store, carry],
  );
  return (
    <div className="relative flex min-h-0 flex-1">
      <div className="flex min-w-0 flex-1 flex-col">
        {/* Keys and focus are those of the blocks in it. */}
        <div
          ref={scroller}
          role="group"
          aria-label={words.list}
          className="relative min-h-0 flex-1 overflow-y-auto border-t border-rule-strong"
          onKeyDown={press}
          onFocus={onFocus}
          onClickCapture={tap}
        >
          <div
            ref={probe}
            className="absolute h-[4.5rem] w-0 touch:h-[6.75rem] max-sm:h-[8rem] touch:max-sm:h-[10.5rem]"
          />
          <div aria-hidden="true" className={`invisible absolute inset-x-4 h-0 sm:inset-x-5 ${RIBBON_COLUMNS}`}>
            <div className="max-sm:hidden" />
            <div ref={strip} />
          </div>
          <div className="relative" style={{ height: total }}>
            {items.map(({ index, start, size }) => {
              const universe = universes[index];
              if (universe === undefined) return null;
              return (
                <div
                  key={universe}
                  className="absolute inset-x-0 border-b border-rule px-4 py-1.5 sm:px-5"
                  style={{ top: start, height: size }}
                >
                  <RibbonRow
                    store={store}
                    universe={universe}
                    label={getRow(rig.universes, String(universe))?.label ?? ''}
                    length={length}
                    writable={writable ? 'yes' : 'no'}
                    stop={here?.universe === universe ? blockKey(here.seat) : undefined}
                    held={carried && universeOf(carried.from) === universe ? blockKey(carried.block) : undefined}
                    others={othersAt(universe)}
                    landing={landing && universeOf(landing.at) === universe ? landing : undefined}
                    marked={open}
                    onOpen={openUnit}
                    onSlots={onSlots}
                    onLabel={label}
                    onGrab={grab}
                  />
                </div>
              );
            })}
          </div>
        </div>
        <CarryLine store={store} carry={carry} landing={landing} onTakenBack={follow} />
      </div>
      {open === undefined ? null : (
        <UnitPanel
          store={store}
          id={open}
          ribbons={ribbons}
          cursor={cursor}
          onStep={lookAt}
          onOpen={openUnit}
          onCarry={writable ? carryOpen : undefined}
          rigId={rigId}
          onClose={close}
        />
      )}
    </div>
  );
}

/** The universes to draw; who may carry blocks has the first number after them as well, for there is room in it. */
function withNext(choices: readonly UniverseChoice[], who: 'editor' | 'reader'): readonly Universe[] {
  const universes = choices.map(({ universe }) => universe);
  const next = (universes.at(-1) ?? 0) + 1;
  return who === 'reader' || next > LAST_UNIVERSE ? universes : [...universes, next as Universe];
}
