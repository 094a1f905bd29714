import { assert } from '#base/assert.ts';
import { absolute, universeOf } from '#engine/model/address.ts';
import type { Edit, Plan } from '#engine/model/edit.ts';
import type { Cells } from '#engine/model/fixture.ts';
import { fixtureId, noteId } from '#engine/model/ids.ts';
import { type LibraryRevision, pinMode } from '#engine/type/pin.ts';
import { footprintsOfMode } from '#engine/type/slots-of.ts';
import { FEEDS, PER_CIRCUIT } from './demo-feeds.ts';
import { BREAKWATER, CORRECTIONS, GROUPS, type Group, HALYARD, PILOT, TIDELINE } from './demo-groups.ts';
import { DEMO_NETWORK } from './demo-network.ts';
import { HOUSE_RECORD, SHOW_UPKEEP } from './demo-record.ts';
import { RUN_EDITS, runCells } from './demo-runs.ts';

/** The demo's show rig: an invented show of 152 fixtures by invented makers, with a few honest findings in it. */
export const DEMO_RIG = {
  id: 'demo-lantern-tide',
  crew: 'demo-touring',
  name: 'The Lantern Tide',
  kind: 'show',
} as const;

/** What the rig has copied from the library, from the first revision of each type. */
const TYPES: readonly (readonly [typeId: string, modes: readonly string[]])[] = [
  ['demo-pilot', ['Short 12', 'Full 24']],
  ['demo-halyard', ['Standard', 'Extended']],
  ['demo-tideline', ['Four cells 20', 'Twelve cells 52']],
  ['demo-lodestone', ['Direct 5', 'Colour 9']],
  ['demo-fresnel', ['Dimmer']],
  ['demo-scroller', ['Dimmer and scroller']],
  ['demo-breakwater', ['Seven slots']],
  ['demo-fogbank', ['Three slots']],
];

const UNIVERSES: readonly (readonly [universe: number, label: string])[] = [
  [1, 'Front of house, Bar 1'],
  [2, 'Bars 2 and 3'],
  [3, 'Bars 4 and 5, booms'],
  [4, 'Cloth row, gallery, deck'],
];

/** What was found out and agreed at the fit-up. The haze has nobody yet who answers for it. */
const AGREED: readonly Edit[] = [
  { kind: 'set-wanted', type: PILOT, version: '1.6' },
  {
    kind: 'set-signature',
    hazard: 'strobe',
    person: 'Tamsin Orrell, production manager',
    on: '2026-11-23',
    types: [BREAKWATER, TIDELINE, PILOT, HALYARD],
  },
];

/** The whole rig as one plan, ready to be applied to an empty document. The same every time for the same library. */
export function demoPlan(library: readonly LibraryRevision[]): Plan {
  const fixtures = GROUPS.flatMap((group, index) => unitsOf(group, index * 1000, CORRECTIONS));
  const positions = GROUPS.map(
    (group, index): Edit => ({ kind: 'set-position', name: group.position, order: index + 1 }),
  );
  const modes = TYPES.flatMap(([typeId, names]) => names.map((name) => copyOf(library, typeId, name)));
  const universes = UNIVERSES.map(
    ([number, label]): Edit => ({ kind: 'set-universe', universe: universeOf(absolute(number, 1)), label }),
  );
  const rest: Edit[] = [
    {
      kind: 'set-note',
      note: noteId('demo-note-1'),
      text: 'Fit-up Monday 8:00. Data test before the bars go out.',
      order: 1,
    },
    {
      kind: 'set-note',
      note: noteId('demo-note-2'),
      text: 'Strobes on Deck: warning sign at every door before the first run.',
      order: 2,
    },
  ];
  return {
    name: 'import',
    edits: [
      ...positions,
      ...universes,
      ...modes,
      ...fixtures,
      ...AGREED,
      ...rest,
      ...DEMO_NETWORK,
      ...RUN_EDITS,
      ...FEEDS,
      ...HOUSE_RECORD,
      ...SHOW_UPKEEP,
    ],
  };
}

/** What a rig copies of a type's mode: the first revision of each. */
export function copyOf(library: readonly LibraryRevision[], typeId: string, name: string): Edit {
  const revision = library.find((each) => each.typeId === typeId && each.number === 1);
  const mode = revision?.type.modes.find((each) => each.name === name);
  assert(revision !== undefined && mode !== undefined, `the library has no mode ${name} of ${typeId}`);
  const { maker, model } = revision.type;
  const footprints = footprintsOfMode(revision.type, mode);
  return { kind: 'set-mode', type: `${maker} ${model}`, mode: name, footprints, pin: pinMode(revision, name) };
}

/** The units of a group, one after the other, with what somebody changed at single ones. Equal names in two rigs give equal ids. */
export function unitsOf(
  group: Group,
  order: number,
  corrections: Readonly<Record<string, Cells>>,
  named = 'demo',
): Edit[] {
  return Array.from({ length: group.units }, (_, index): Edit => {
    const unit = index + 1;
    const [first, second] = group.at.map(([universe, slot, step]) => absolute(universe, slot + index * step));
    const cells: Cells = {
      channel: group.channel + index,
      position: group.position,
      unit: String(unit),
      type: group.type,
      mode: group.mode,
      address: first ?? null,
      address2: second ?? null,
      purpose: group.purpose,
      colour: group.colour ?? null,
      circuit: `${group.circuit}-${Math.ceil(unit / PER_CIRCUIT)}`,
      firmware: group.firmware ?? null,
      order: order + unit,
      ...runCells(group.position, unit),
      ...corrections[`${group.position}/${unit}`],
    };
    const name = group.position.toLowerCase().replaceAll(' ', '-');
    return { kind: 'add-fixture', fixture: fixtureId(`${named}-${name}-${unit}`), cells };
  });
}
