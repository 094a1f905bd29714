import { nameKey, SETUP_KEY } from '#engine/model/card.ts';
import { setCard } from '#engine/model/card-edits.ts';
import type { Edit } from '#engine/model/edit.ts';
import { BREAKWATER, HALYARD, PILOT } from './demo-groups.ts';

/** How the numbers of each position run, and how high it hangs, as the invented house has it. */
const PLACES: readonly (readonly [position: string, first: string, trim: number])[] = [
  ['Front bridge', 'stage-left-first', 9.4],
  ['Second bridge', 'stage-left-first', 10.1],
  ['Box left', 'bottom-first', 5.2],
  ['Box right', 'bottom-first', 5.2],
  ['Bar 1', 'stage-left-first', 7.5],
  ['Bar 2', 'stage-left-first', 7.5],
  ['Bar 3', 'stage-left-first', 7.5],
  ['Bar 4', 'stage-left-first', 7.2],
  ['Bar 5', 'stage-left-first', 7.2],
];

const OUTLETS: readonly (readonly [name: string, position: string, carries: string, to: string])[] = [
  ['FOH 1', 'Front bridge', 'network', 'Rack in the dimmer room'],
  ['FOH 2', 'Front bridge', 'dmx', 'Rack in the dimmer room'],
  ['Fly 1', 'Bar 1', 'dmx', 'Fly gallery, left'],
];

/** Two faults, one mended by a swap; what was read off a spot; what is hired. Units by their ids in the demo. */
export const SHOW_UPKEEP: readonly Edit[] = [
  ...setCard('fault', 'demo-fault-1', {
    unit: 'demo-bar-4-2',
    called: 'Bar 4 · 2',
    what: 'flickers below a third',
    seenBy: 'Bram Kettle',
    seenOn: '2026-11-24',
    state: 'open',
  }),
  ...setCard('fault', 'demo-fault-2', {
    unit: 'demo-bar-1-3',
    called: 'Bar 1 · 3',
    what: 'does not tilt',
    seenBy: 'Odile Fenn',
    seenOn: '2026-11-23',
    state: 'mended',
    done: 'Device swapped',
    doneBy: 'Bram Kettle',
    doneOn: '2026-11-24',
  }),
  ...setCard('swap', 'demo-swap-1', {
    unit: 'demo-bar-1-3',
    called: 'Bar 1 · 3',
    out: 'HS 0417',
    in: 'HS 0422',
    from: `${HALYARD}, case 12`,
    why: 'does not tilt',
    by: 'Bram Kettle',
    on: '2026-11-24',
  }),
  ...setCard('reading', 'demo-reading-1', {
    unit: 'demo-bar-1-1',
    called: 'Bar 1 · 1',
    of: 'lamp',
    hours: 612,
    by: 'Bram Kettle',
    on: '2026-10-02',
  }),
  ...setCard('reading', 'demo-reading-2', {
    unit: 'demo-bar-1-1',
    called: 'Bar 1 · 1',
    of: 'lamp',
    hours: 655.5,
    by: 'Bram Kettle',
    on: '2026-11-23',
  }),
  ...setCard('hire', 'demo-hire-1', { item: BREAKWATER, count: 4, from: 'Gannet Hire', due: '2026-12-07' }),
];

/** What is written down of the invented playhouse: in its house rig, and in the show that began as it. */
export const HOUSE_RECORD: readonly Edit[] = [
  ...setCard('venue', SETUP_KEY, {
    name: 'Millrace Playhouse',
    address: '4 Weir Lane, Saltmarsh',
    entry: 'Dock door on the river side, 3.2 m high; ramp for cases on its left',
    width: 14,
    depth: 11.5,
    grid: 16,
    notes: 'The iron is tested at ten every day: nothing stands under it.',
  }),
  ...PLACES.flatMap(([position, first, trim]) => setCard('place', nameKey(position), { position, first, trim })),
  ...OUTLETS.flatMap(([name, position, carries, to]) =>
    setCard('outlet', nameKey(name), { name, position, carries, to }),
  ),
  ...setCard('spare', 'demo-spare-1', { type: HALYARD, mode: 'Standard', count: 1, where: 'Case 12' }),
  ...setCard('spare', 'demo-spare-2', { type: PILOT, count: 2, where: 'Case 7' }),
  ...setCard('contact', 'demo-contact-1', {
    name: 'Hollis Brandreth',
    role: 'house rigger',
    phone: '0100 555 017',
    email: 'hollis@millrace.invalid',
  }),
  ...setCard('contact', 'demo-contact-2', { name: 'Pim Sallow', role: 'house electrician', phone: '0100 555 023' }),
];
