import type { KeyboardEvent, RefObject } from 'react';
import { formatAddress } from '#engine/address/notation.ts';
import { type Absolute, absolute, slotOf, type Universe, universeOf } from '#engine/model/address.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import { isLocked } from '#engine/model/locked.ts';
import { freeRoom } from '#engine/patch/free-room.ts';
import { takeRoomPlan } from '#engine/patch/take-room-plan.ts';
import { unitName } from '#words/findings.ts';
import { RIBBON_WORDS } from '#words/sheet.ts';
import type { Sheet } from '../grid/sheet.ts';
import { carryOutResult } from '../grid/sheet-actions.ts';
import { useRow, useSheet } from '../grid/use-sheet.ts';
import { LinkButton } from '../kit/link-button.tsx';
import type { RowView } from '../live/row-views.ts';
import { useCalmRig } from '../live/use-calm-rig.ts';
import { RibbonStrip } from './ribbon-strip.tsx';
import { startOf } from './start-of.ts';
import { useOccupancy } from './use-occupancy.ts';

/** How many places are offered. */
const OFFERED = 5;

export interface RibbonProps {
  readonly sheet: Sheet;
  readonly frame: RefObject<HTMLElement | null>;
  readonly onGo: (fixture: FixtureId) => void;
  /** Gives the focus back to the sheet. */
  readonly onLeave: () => void;
}

/** Under the sheet: the universe of the selected unit, where it sits, and where there is room for it. */
export function Ribbon({ sheet, frame, onGo, onLeave }: RibbonProps) {
  const row = useSheet(sheet, (state) => state.selection?.cursor.row);
  const press = (event: KeyboardEvent) => {
    if (event.key !== 'Escape' && event.key !== 'F6') return;
    event.preventDefault();
    onLeave();
  };
  return (
    <section
      ref={frame}
      aria-label={RIBBON_WORDS.name}
      className="shrink-0 border-t border-ink bg-paper px-4 pt-2 pb-1 sm:px-5"
      onKeyDown={press}
    >
      {row === undefined ? (
        <p className="text-soft">{RIBBON_WORDS.nothing}</p>
      ) : (
        <UnitRibbon sheet={sheet} row={row} onGo={onGo} onTaken={onLeave} />
      )}
    </section>
  );
}

export interface UnitRibbonProps {
  readonly sheet: Sheet;
  readonly row: FixtureId;
  readonly onGo: (fixture: FixtureId) => void;
  /** Called when the unit was placed: what was pressed is gone then. */
  readonly onTaken: () => void;
}

/** The universe of one unit, and the places that have room for it. */
export function UnitRibbon({ sheet, row, onGo, onTaken }: UnitRibbonProps) {
  const column = useSheet(sheet, (state) => state.selection?.cursor.column);
  const view = useRow(sheet.store, row);
  if (view === undefined) return <p className="text-soft">{RIBBON_WORDS.nothing}</p>;
  const start = startOf(view.fixture, column);
  const universe = universeOf(start ?? absolute(1, 1));
  return (
    <div className="flex flex-col gap-1">
      <div className="grid grid-cols-[4.5rem_1fr] items-start gap-x-2">
        <UniverseName sheet={sheet} universe={universe} />
        <RibbonStrip store={sheet.store} universe={universe} marked={row} onGo={onGo} />
      </div>
      <Room sheet={sheet} view={view} start={start} onTaken={onTaken} />
    </div>
  );
}

function UniverseName({ sheet, universe }: { readonly sheet: Sheet; readonly universe: Universe }) {
  const { freeSlots } = useOccupancy(sheet.store, universe);
  return (
    <p>
      <span className="sr-only">{RIBBON_WORDS.universe} </span>
      <span className="block font-serif text-name font-semibold">{universe}</span>
      <span className="text-small text-soft">{RIBBON_WORDS.free(freeSlots)}</span>
    </p>
  );
}

interface RoomProps {
  readonly sheet: Sheet;
  readonly view: RowView;
  readonly start: Absolute | null;
  readonly onTaken: () => void;
}

/** What the unit asks for, and the places that have room for it; one press puts it there. */
function Room({ sheet, view: { fixture, mode }, start, onTaken }: RoomProps) {
  const { store } = sheet;
  // Room changes with every unit of the rig, not only with this one.
  useCalmRig(store);
  const unit = unitName(fixture);
  if (mode === undefined) return <p className="text-soft">{RIBBON_WORDS.modeUnknown(unit)}</p>;
  const slots = mode.footprints.reduce((sum, footprint) => sum + footprint, 0);
  if (isLocked(fixture)) {
    return (
      <p>
        {askWords(unit, start, mode.footprints)} {RIBBON_WORDS.locked}
      </p>
    );
  }
  const near = start ?? absolute(1, 1);
  const found = freeRoom(store.occupancy(), {
    footprints: mode.footprints,
    near,
    moving: [fixture.id],
    most: OFFERED + 1,
  });
  const places = found.filter((place) => place !== start).slice(0, OFFERED);
  const take = (place: Absolute) => {
    if (carryOutResult(sheet, takeRoomPlan(store.rig(), fixture.id, place))) onTaken();
  };
  return (
    <p className="flex flex-wrap items-baseline gap-x-3 touch:items-center">
      <span>{askWords(unit, start, mode.footprints)}</span>
      <span>{places.length === 0 ? RIBBON_WORDS.noRoom(slots) : RIBBON_WORDS.room(slots)}</span>
      {places.map((place) => (
        <LinkButton
          key={place}
          className="font-mono font-semibold"
          aria-label={RIBBON_WORDS.take(unit, formatAddress(place))}
          disabled={!store.canEdit()}
          onClick={() => take(place)}
        >
          {formatAddress(place)}
        </LinkButton>
      ))}
    </p>
  );
}

function askWords(unit: string, start: Absolute | null, footprints: readonly number[]): string {
  if (start === null) return RIBBON_WORDS.notPatched(unit);
  const [first = 0] = footprints;
  return RIBBON_WORDS.asks(
    unit,
    formatAddress(start),
    footprints.length > 1 || first < 2 ? null : slotOf(start) + first - 1,
  );
}
