import type { Edit, Plan } from '#engine/model/edit.ts';
import type { LibraryRevision } from '#engine/type/pin.ts';
import { FEEDS } from './demo-feeds.ts';
import { FRESNEL, GROUPS, type Group } from './demo-groups.ts';
import { DEMO_NETWORK } from './demo-network.ts';
import { HOUSE_RECORD } from './demo-record.ts';
import { copyOf, unitsOf } from './demo-rig.ts';
import { RUN_EDITS } from './demo-runs.ts';

/** The standing rig of the demo's venue, from which the demo's show began. */
export const DEMO_HOUSE = {
  id: 'demo-millrace-house',
  crew: 'demo-house',
  venue: 'demo-millrace',
  name: 'Millrace house rig',
  kind: 'house',
  note: 'As it hangs between shows',
} as const;

/** What hangs there between shows: some of it otherwise than the show has it, so that there is something to put back. */
const STANDING: Readonly<Record<string, Partial<Group>>> = {
  'Front bridge': {},
  'Second bridge': { at: [[1, 201, 9]], purpose: 'Front light upstage' },
  'Box left': { at: [[1, 331, 1]], colour: 'open' },
  'Box right': { at: [[1, 341, 1]], colour: 'open' },
  Gallery: {},
  'Deck rear': { at: [[2, 1, 1]], colour: 'open', purpose: 'Work light' },
};

/** Units of the house that the show took down. */
const TAKEN_DOWN: Group = {
  position: 'Wings',
  units: 4,
  type: FRESNEL,
  mode: 'Dimmer',
  channel: 61,
  at: [[2, 21, 1]],
  purpose: 'Side light',
  circuit: 'WG',
};

const MODES: readonly (readonly [typeId: string, mode: string])[] = [
  ['demo-lodestone', 'Colour 9'],
  ['demo-fresnel', 'Dimmer'],
  ['demo-scroller', 'Dimmer and scroller'],
];

/** The whole house rig as one plan, ready to be applied to an empty document. The same every time for the same library. */
export function demoHousePlan(library: readonly LibraryRevision[]): Plan {
  const standing = GROUPS.flatMap((group, index) => {
    const own = STANDING[group.position];
    return own === undefined ? [] : unitsOf({ ...group, ...own }, index * 1000, {});
  });
  return {
    name: 'import',
    edits: [
      ...GROUPS.map(({ position }, index): Edit => ({ kind: 'set-position', name: position, order: index + 1 })),
      ...MODES.map(([typeId, mode]) => copyOf(library, typeId, mode)),
      ...standing,
      ...unitsOf(TAKEN_DOWN, GROUPS.length * 1000, {}, 'demo-house'),
      ...DEMO_NETWORK,
      ...RUN_EDITS,
      ...FEEDS,
      ...HOUSE_RECORD,
    ],
  };
}
