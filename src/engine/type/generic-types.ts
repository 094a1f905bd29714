import {
  type ChannelFunction,
  type FixtureType,
  type Hazards,
  NO_HAZARDS,
  NO_SETTINGS,
  NOTHING_STATED,
  type Part,
  type Resolution,
  type TypeChannel,
  type TypeMode,
} from '../model/fixture-type.ts';
import { highest } from './dmx-value.ts';

// The table below is made as this file is loaded, so what it is made of stands before it.
const BODY = 'Body';
const CELL = 'Cell';
const CHANGER = 'Colour changer';

/** What has to be up so that a unit is seen. */
const LIGHT = /^(Dimmer|ColorAdd_\w+)$/;

/** Types that need no manual: what a slot does is all there is to say of them. Attributes are GDTF's (Annex B). */
export const GENERIC_TYPES: readonly FixtureType[] = [
  generic('Dimmer', [mode('8 bit', [slot('Dimmer', 1)]), mode('16 bit', [slot('Dimmer', 1, 2)])]),
  generic('Relay', [mode('1 slot', [relay(1)])]),
  generic('RGB', colourModes('R', 'G', 'B')),
  generic('RGBW', colourModes('R', 'G', 'B', 'W')),
  generic('RGBA', colourModes('R', 'G', 'B', 'RY')),
  generic('RGBAW', colourModes('R', 'G', 'B', 'RY', 'W')),
  generic('RGBAW UV', colourModes('R', 'G', 'B', 'RY', 'W', 'UV'), { ultraviolet: true }),
  generic('CMY', [
    mode(
      'CMY',
      ['C', 'M', 'Y'].map((colour, at) => slot(`ColorSub_${colour}`, at + 1)),
    ),
  ]),
  generic('Tunable white', [
    mode('Warm and cold', [slot('ColorAdd_WW', 1), slot('ColorAdd_CW', 2)]),
    mode('Intensity and temperature', [slot('Dimmer', 1), slot('CTC', 2)]),
  ]),
  scroller(),
  cellBar(4),
  cellBar(8),
  generic('Strobe', [mode('Intensity and rate', [slot('Dimmer', 1), slot('StrobeFrequency', 2)])], { strobe: true }),
  generic('Fog machine', [mode('1 slot', [slot('Fog1', 1)]), mode('Fog and fan', [slot('Fog1', 1), slot('Fan1', 2)])], {
    fog: true,
    heat: true,
  }),
  generic('Haze machine', [mode('Haze and fan', [slot('Haze1', 1), slot('Fan1', 2)])], { fog: true }),
];

function generic(model: string, modes: readonly TypeMode[], hazards: Partial<Hazards> = {}): FixtureType {
  return {
    maker: 'Generic',
    model,
    shortName: model,
    description: '',
    guid: '',
    parts: [part(BODY, null)],
    modes,
    physical: NOTHING_STATED,
    settings: NO_SETTINGS,
    hazards: { ...NO_HAZARDS, ...hazards },
  };
}

function part(name: string, within: string | null): Part {
  return { name, kind: 'part', within, copy: null };
}

function mode(name: string, channels: readonly TypeChannel[]): TypeMode {
  return { name, description: '', root: BODY, channels, firmware: [] };
}

function slot(attribute: string, ...offsets: readonly number[]): TypeChannel {
  const resolution = offsets.length as Resolution;
  const master = attribute === 'Dimmer' ? 'Grand' : 'None';
  const functions = [stretch(`${attribute} 1`, attribute, 0)];
  return {
    part: BODY,
    break: 1,
    offsets,
    resolution,
    highlight: LIGHT.test(attribute) ? highest(resolution) : null,
    initial: null,
    uses: [{ attribute, snap: 'No', master, functions }],
  };
}

function stretch(name: string, attribute: string, from: number): ChannelFunction {
  return { name, attribute, from, default: 0, physical: { from: 0, to: 1 }, when: null, ranges: [] };
}

/** Off in the lower half, on in the upper one (common practice). */
function relay(offset: number): TypeChannel {
  const channel = slot('Dimmer', offset);
  const ranges = [
    { name: 'Off', from: 0, physical: null },
    { name: 'On', from: 128, physical: null },
  ];
  const functions = [{ ...stretch('Switch', 'Dimmer', 0), ranges }];
  return { ...channel, uses: [{ attribute: 'Dimmer', snap: 'Yes', master: 'None', functions }] };
}

function colourModes(...colours: readonly string[]): readonly TypeMode[] {
  const from = (first: number) => colours.map((colour, at) => slot(`ColorAdd_${colour}`, first + at));
  return [mode('Colours', from(1)), mode('Intensity and colours', [slot('Dimmer', 1), ...from(2)])];
}

/** A lamp on a dimmer with a scroller before it: two breaks, since the scroller is fed data of its own. */
function scroller(): FixtureType {
  const type = generic('Dimmer with scroller', []);
  const changer = { ...slot('Color1', 1), part: CHANGER, break: 2 };
  return {
    ...type,
    parts: [...type.parts, part(CHANGER, BODY)],
    modes: [mode('Dimmer and scroller', [slot('Dimmer', 1), changer])],
    hazards: { ...NO_HAZARDS, movingParts: true },
  };
}

/** A bar of RGB cells, and the same behind one intensity. */
function cellBar(cells: number): FixtureType {
  const copies = (root: string, first: number): Part[] =>
    Array.from({ length: cells }, (_, at) => {
      const starts = [{ break: 1, slot: first + at * 3 }];
      return { ...part(`${root} ${CELL.toLowerCase()} ${at + 1}`, root), copy: { of: CELL, starts } };
    });
  const colours = ['R', 'G', 'B'].map((colour, at): TypeChannel => {
    return { ...slot(`ColorAdd_${colour}`, at + 1), part: CELL, break: 'of-copy' };
  });
  const dimmed = 'Body behind intensity';
  const intensity = { ...slot('Dimmer', 1), part: dimmed };
  const type = generic(`RGB bar, ${cells} cells`, []);
  return {
    ...type,
    parts: [part(CELL, null), part(BODY, null), ...copies(BODY, 1), part(dimmed, null), ...copies(dimmed, 2)],
    modes: [mode('Cells', colours), { ...mode('Intensity and cells', [intensity, ...colours]), root: dimmed }],
  };
}
