import type { FixtureType } from '#engine/model/fixture-type.ts';
import { contentHash, type Sha256 } from '#engine/type/content-hash.ts';
import type { LibraryRevision } from '#engine/type/pin.ts';
import { breakwaterStrobe } from './breakwater-strobe.ts';
import { fogbankHazer } from './fogbank-hazer.ts';
import { halyardSpot, halyardSpotSince22 } from './halyard-spot.ts';
import { houseFresnel } from './house-fresnel.ts';
import { houseScroller } from './house-scroller.ts';
import { lodestoneProfile } from './lodestone-profile.ts';
import { pilotWash } from './pilot-wash.ts';
import { tidelineBatten } from './tideline-batten.ts';

export interface DemoType {
  /** In the library of the demo's crew. */
  readonly id: string;
  /** Revision 1 first, each with what its maker said of it. */
  readonly revisions: readonly { readonly type: FixtureType; readonly note: string }[];
}

/** The invented types of the demo's crew, from manuals that nobody has printed. */
export const DEMO_TYPES: readonly DemoType[] = [
  once('demo-pilot', pilotWash),
  {
    id: 'demo-halyard',
    revisions: [
      { type: halyardSpot, note: 'From the first manual' },
      { type: halyardSpotSince22, note: 'Firmware 2.2: Standard has fine slots for dimmer and zoom' },
    ],
  },
  once('demo-tideline', tidelineBatten),
  once('demo-lodestone', lodestoneProfile),
  once('demo-breakwater', breakwaterStrobe),
  once('demo-fogbank', fogbankHazer),
  once('demo-fresnel', houseFresnel),
  once('demo-scroller', houseScroller),
];

function once(id: string, type: FixtureType): DemoType {
  return { id, revisions: [{ type, note: 'From the manual' }] };
}

/** Every revision of the demo's types, as a library names them. */
export function demoRevisions(sha256: Sha256): Promise<readonly LibraryRevision[]> {
  const revisions = DEMO_TYPES.flatMap(({ id, revisions }) =>
    revisions.map(({ type }, at) => ({ typeId: id, number: at + 1, type })),
  );
  return Promise.all(revisions.map(async (each) => ({ ...each, hash: await contentHash(each.type, sha256) })));
}
