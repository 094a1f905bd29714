import type { ReactNode } from 'react';
import { getRow } from '#base/table.ts';
import { formatAddress } from '#engine/address/notation.ts';
import { absolute } from '#engine/model/address.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import { foldName } from '#engine/model/ids.ts';
import { type FixtureSlot, fixtureSlots } from '#engine/sheet/fixture-slots.ts';
import { firmwareFits } from '#engine/type/firmware.ts';
import { pinnedMode } from '#engine/type/pin.ts';
import { unitName } from '#words/findings.ts';
import { SLOT_CARD_WORDS as words } from '#words/slots.ts';
import { useRow } from '../grid/use-sheet.ts';
import { Mark } from '../kit/mark.tsx';
import type { RigStore } from '../live/rig-store.ts';
import type { RowView } from '../live/row-views.ts';
import { LockPart } from '../locks/lock-part.tsx';
import { HazardsPart } from '../panels/library/hazards-part.tsx';
import { ToHistory } from '../panels/rig/to-history.tsx';
import { OriginPart } from './origin-part.tsx';
import { PathPart } from './path-part.tsx';
import { SlotRow } from './slot-row.tsx';
import { SwitchPicture } from './switch-picture.tsx';

export interface SlotCardProps {
  readonly store: RigStore;
  readonly id: FixtureId;
  /** The slot one came from, to be marked. */
  readonly marked?: { readonly part: number; readonly own: number } | undefined;
  /** The way to the units beside it. */
  readonly steps: ReactNode;
}

/** What every slot of one unit does, where it is, and what its values mean. Cautions come first. */
export function SlotCard({ store, id, marked, steps }: SlotCardProps) {
  const row = useRow(store, id);
  if (row === undefined) return <p>{words.none}</p>;
  const { fixture, mode } = row;
  const slots = [...fixtureSlots(fixture, mode)];
  const parts = [...new Set(slots.map(({ part }) => part))];
  const what = [fixture.type, fixture.mode, fixture.channel === null ? '' : words.channel(fixture.channel)];
  return (
    <>
      <div>
        <h3 className="text-name">{unitName(fixture)}</h3>
        <p className="text-soft">{what.filter((text) => text.trim() !== '').join(' · ')}</p>
      </div>
      <div className="flex flex-wrap gap-x-5">
        {steps}
        <ToHistory unit={id} />
      </div>
      <LockPart store={store} id={id} />
      {mode?.pin ? <HazardsPart hazards={mode.pin.type.hazards} /> : null}
      <Known row={row} slots={slots} />
      <Firmware store={store} row={row} />
      <OriginPart fixture={fixture} />
      <PathPart store={store} fixture={fixture} />
      <Switches row={row} />
      {fixture.addresses.length === 0 ? <p>{words.notPatched}</p> : null}
      {parts.map((part) => (
        <BreakTable
          key={part}
          slots={slots.filter((slot) => slot.part === part)}
          several={parts.length > 1}
          marked={marked?.part === part ? marked.own : undefined}
        />
      ))}
    </>
  );
}

/** Says what is not known of the slots; nothing when all of it is. */
function Known({ row: { mode }, slots }: { readonly row: RowView; readonly slots: readonly FixtureSlot[] }) {
  const said =
    mode === undefined
      ? words.unknownMode
      : mode.pin === null
        ? words.unknown
        : slots.some(({ uses }) => uses === null)
          ? words.beyond
          : undefined;
  if (said === undefined) return null;
  return (
    <p>
      <Mark severity="caution" /> {said}
    </p>
  );
}

/** Its address switches, where its type says that it has some. */
function Switches({ row: { fixture, mode } }: { readonly row: RowView }) {
  const variant = mode?.pin?.type.settings.switches ?? null;
  if (mode === undefined || variant === null) return null;
  const starts = mode.footprints.flatMap((slots, at) => {
    const start = fixture.addresses[at] ?? null;
    return slots === 0 || start === null ? [] : [{ part: at + 1, start }];
  });
  return <SwitchPicture starts={starts} variant={variant} />;
}

/** The firmware the unit was found with, and which its mode or the crew asks for. */
function Firmware({ store, row: { fixture, mode } }: { readonly store: RigStore; readonly row: RowView }) {
  const needed = (mode?.pin ? pinnedMode(mode.pin)?.firmware : undefined) ?? [];
  const wanted = getRow(store.rig().wanted, foldName(fixture.type))?.version ?? '';
  if (fixture.firmware === '' && needed.length === 0 && wanted === '') return null;
  const facts = [
    [words.firmware, fixture.firmware === '' ? words.notFound : fixture.firmware],
    [words.needed, needed.join(', ')],
    [words.wanted, wanted],
  ] as const;
  const lacks = fixture.firmware !== '' && firmwareFits(fixture.firmware, needed) === 'no';
  return (
    <div>
      <dl className="grid grid-cols-[auto_1fr] gap-x-4">
        {facts.map(([name, value]) =>
          value === '' ? null : (
            <div key={name} className="contents">
              <dt className="text-soft">{name}</dt>
              <dd>{value}</dd>
            </div>
          ),
        )}
      </dl>
      {lacks ? (
        <p>
          <Mark severity="caution" /> {words.lacks}
        </p>
      ) : null}
    </div>
  );
}

interface BreakTableProps {
  /** Of one break. */
  readonly slots: readonly FixtureSlot[];
  /** Whether the unit has other breaks. */
  readonly several: boolean;
  readonly marked: number | undefined;
}

function BreakTable({ slots, several, marked }: BreakTableProps) {
  const [first] = slots;
  if (first === undefined) return null;
  const start = first.at === null ? null : formatAddress(absolute(first.at.universe, first.at.slot));
  const title = words.breakTitle(first.part, start);
  return (
    <div>
      {several ? <h4 className="text-large font-semibold">{title}</h4> : null}
      <table className="w-full border-collapse text-left">
        <caption className="sr-only">{title}</caption>
        <thead>
          <tr className="border-b border-ink text-soft">
            <th scope="col" className="w-[4.75rem] py-0.5 font-normal">
              {words.address}
            </th>
            <th scope="col" className="w-10 py-0.5 pr-3 text-right font-normal">
              {words.slot}
            </th>
            <th scope="col" className="py-0.5 font-normal">
              {words.does}
            </th>
          </tr>
        </thead>
        <tbody>
          {slots.map((slot) => (
            <SlotRow
              key={slot.own}
              slot={slot}
              placed={start !== null}
              look={slot.own === marked ? 'marked' : 'plain'}
            />
          ))}
        </tbody>
      </table>
    </div>
  );
}
