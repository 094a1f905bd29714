import type { ReactNode } from 'react';
import { SLOTS, slotOf } from '#engine/model/address.ts';
import type { Fixture } from '#engine/model/fixture.ts';
import type { Landing } from '#engine/patch/landing.ts';
import { unitName } from '#words/findings.ts';
import { carriedByOther, landingMark } from '#words/ribbons.ts';
import { personLook } from '../../grid/person-looks.ts';
import type { OtherCarrying } from '../../universes/others-carrying.ts';

/** Where the carried block would sit; what it would meet stands on it, and as a sentence under the ribbons. */
export function LandingBlock({ landing }: { readonly landing: Landing }) {
  const { over, meets } = landing;
  return (
    <LandingFrame landing={landing} look="z-[3] border-ink bg-selected/70">
      <span
        aria-hidden="true"
        className={`absolute top-full ${endOf(landing)} border border-ink bg-sheet px-1 font-mono text-small whitespace-nowrap ${over > 0 || meets.length > 0 ? 'text-blocker' : 'text-ink'}`}
      >
        {landingMark(landing)}
      </span>
    </LandingFrame>
  );
}

/** Where a block would sit that somebody else carries, with their name. */
export function OtherLanding({
  carrying,
  fixture,
}: {
  readonly carrying: OtherCarrying;
  readonly fixture: Fixture | undefined;
}) {
  const { person, landing } = carrying;
  const { outline, ground } = personLook(person.colour);
  return (
    <LandingFrame landing={landing} look={`z-[2] border-transparent bg-selected/40 outline-2 ${outline}`}>
      <span
        className={`absolute bottom-full ${endOf(landing)} px-1 text-small leading-4 whitespace-nowrap text-person-ink ${ground}`}
      >
        {carriedByOther(person.name, unitName(fixture), landing)}
      </span>
    </LandingFrame>
  );
}

interface LandingFrameProps {
  readonly landing: Landing;
  readonly look: string;
  readonly children: ReactNode;
}

function LandingFrame({ landing, look, children }: LandingFrameProps) {
  const { at } = landing;
  return (
    <span
      className={`pointer-events-none absolute -inset-y-1 border-2 ${look}`}
      style={{ left: `${(100 * (slotOf(at) - 1)) / SLOTS}%`, width: `${(100 * shownSlots(landing)) / SLOTS}%` }}
    >
      {children}
    </span>
  );
}

const shownSlots = ({ slots, over }: Landing) => Math.max(1, slots - over);

/** Its words begin where it begins, or end where it ends when that is past the middle. */
const endOf = (landing: Landing) => (slotOf(landing.at) - 1 + shownSlots(landing) > SLOTS / 2 ? 'right-0' : 'left-0');
