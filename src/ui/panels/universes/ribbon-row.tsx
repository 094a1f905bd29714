import { memo, type PointerEvent } from 'react';
import { getRow } from '#base/table.ts';
import type { Occupancy } from '#engine/address/occupancy.ts';
import { type Universe, universeOf } from '#engine/model/address.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import type { Landing } from '#engine/patch/landing.ts';
import { RIBBONS_WORDS as words } from '#words/ribbons.ts';
import { RIBBON_WORDS } from '#words/sheet.ts';
import { LineField } from '../../kit/line-field.tsx';
import { LinkButton } from '../../kit/link-button.tsx';
import type { RigStore } from '../../live/rig-store.ts';
import type { OtherCarrying } from '../../universes/others-carrying.ts';
import { RibbonBlock } from '../../universes/ribbon-block.tsx';
import { type Block, blocksOf } from '../../universes/ribbon-blocks.ts';
import { RibbonGround } from '../../universes/ribbon-ground.tsx';
import { useOccupancy } from '../../universes/use-occupancy.ts';
import { LandingBlock, OtherLanding } from './landing-block.tsx';

export interface RibbonRowProps {
  readonly store: RigStore;
  readonly universe: Universe;
  readonly label: string;
  readonly writable: 'yes' | 'no';
  /** Length of a ribbon in pixels: all are of one length, so it is measured once. */
  readonly length: number;
  /** Key of the block that Tab comes to, if it is in this universe. */
  readonly stop: string | undefined;
  /** Key of the block that is carried, if it is from this universe. */
  readonly held: string | undefined;
  /** Where the carried block would come to sit in this universe. */
  readonly landing: Landing | undefined;
  /** What others carry from this universe or over it. */
  readonly others: readonly OtherCarrying[];
  /** The unit whose slots stand beside the ribbons. */
  readonly marked: FixtureId | undefined;
  readonly onOpen: (fixture: FixtureId) => void;
  readonly onSlots: (universe: Universe) => void;
  readonly onLabel: (universe: Universe, text: string) => void;
  readonly onGrab: (event: PointerEvent, block: Block, universe: Universe) => void;
}

export const RIBBON_COLUMNS = 'grid grid-cols-[15rem_1fr] gap-x-3 max-sm:grid-cols-1';

/** One of many ribbons: its name, label and room, and its blocks. */
export const RibbonRow = memo(function RibbonRow({ store, universe, label, writable, length, ...row }: RibbonRowProps) {
  const occupancy = useOccupancy(store, universe);
  const rig = store.rig();
  const { stop, held, landing, others, marked, onOpen, onSlots, onLabel, onGrab } = row;
  const isHeld = (key: string) => key === held || others.some(({ block }) => block === key);
  const grab = (event: PointerEvent, block: Block) => onGrab(event, block, universe);
  return (
    <div className={RIBBON_COLUMNS}>
      <div className="min-w-0">
        <div className="flex items-baseline gap-2">
          <h3 className="font-serif text-name leading-6 font-semibold">
            <LinkButton aria-label={words.toSlots(universe)} onClick={() => onSlots(universe)}>
              {universe}
            </LinkButton>
          </h3>
          <span className="truncate text-small text-soft">{roomWords(occupancy)}</span>
        </div>
        <LineField
          name={words.label(universe)}
          placeholder={words.labelHint}
          value={label}
          disabled={writable === 'no'}
          onWrite={(text) => onLabel(universe, text)}
        />
      </div>
      <RibbonGround rig={rig} occupancy={occupancy}>
        <ul
          data-universe={universe}
          aria-label={`${RIBBON_WORDS.universe} ${universe}`}
          className="absolute inset-0 select-none"
        >
          {blocksOf(occupancy).map((block) => (
            <RibbonBlock
              key={block.key}
              block={block}
              fixture={getRow(rig.fixtures, block.seat.fixture)}
              pixels={(block.width * length) / 100}
              look={isHeld(block.key) ? 'held' : block.seat.fixture === marked ? 'marked' : 'plain'}
              tabIndex={block.key === stop ? 0 : -1}
              onGo={onOpen}
              onGrab={writable === 'yes' ? grab : undefined}
            />
          ))}
        </ul>
        {others
          .filter((carrying) => universeOf(carrying.landing.at) === universe)
          .map((carrying) => (
            <OtherLanding
              key={carrying.person.id}
              carrying={carrying}
              fixture={getRow(rig.fixtures, carrying.fixture)}
            />
          ))}
        {landing === undefined ? null : <LandingBlock landing={landing} />}
      </RibbonGround>
    </div>
  );
});

function roomWords({ free, freeSlots }: Occupancy): string {
  return words.room(freeSlots, Math.max(0, ...free.map(({ first, last }) => last - first + 1)));
}
