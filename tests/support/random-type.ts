import type { Rng } from '#base/rng.ts';
import {
  type ChannelFunction,
  type ChannelUse,
  type FixtureType,
  HAZARD_KINDS,
  type Hazards,
  LASER_CLASSES,
  type NamedRange,
  NO_HAZARDS,
  PART_KINDS,
  type Part,
  type Physical,
  type Resolution,
  type TypeChannel,
  type TypeMode,
} from '#engine/model/fixture-type.ts';
import { highest } from '#engine/type/dmx-value.ts';
import { channelName } from '#engine/type/type-troubles.ts';

/** A sound fixture type of any shape: cells, several breaks, holes, virtual channels, conditions, and names of all kinds. */
export function randomType(rng: Rng): FixtureType {
  const parts = randomParts(rng);
  const names = new Set<string>();
  const modes = Array.from({ length: 1 + rng.int(3) }, () => randomMode(rng, parts, names));
  return {
    maker: randomText(rng),
    model: randomText(rng),
    shortName: rng.pick(['', 'Spot', randomText(rng)]),
    description: rng.pick(['', 'Two\nlines & "more"', randomText(rng)]),
    guid: rng.pick(['', '1F3B5C7D-0A2C-4E6F-8B9D-0123456789AB']),
    parts,
    modes,
    physical: randomPhysical(rng),
    settings: { switches: rng.pick(['A', 'B', null]), onLoss: rng.pick(['', 'Holds, then fades out']) },
    hazards: randomHazards(rng),
  };
}

const WORDS = [
  'Head',
  'Open',
  'Größe',
  'a.b',
  'x,y',
  '<&>"',
  'Zoom 2',
  'Pan/Tilt',
  '赤',
  '50%',
  ' ',
  '#',
  'é',
  'e',
  '(2)',
  '😀',
  '\t',
];

function randomText(rng: Rng): string {
  return Array.from({ length: 1 + rng.int(3) }, () => rng.pick(WORDS)).join(rng.pick(['', ' ']));
}

function freshText(rng: Rng, taken: Set<string>): string {
  let text = randomText(rng);
  while (taken.has(text)) text += rng.pick(WORDS);
  taken.add(text);
  return text;
}

/** Templates first, then one body; copies stand in the body and name templates. */
function randomParts(rng: Rng): readonly Part[] {
  const names = new Set<string>();
  const parts: Part[] = [];
  const tree = (within: string | null, depth: number): void => {
    const name = freshText(rng, names);
    parts.push({ name, kind: rng.pick(PART_KINDS), within, copy: null });
    for (let i = rng.int(3); i > 0 && depth < 3; i--) tree(name, depth + 1);
  };
  for (let i = rng.int(3); i > 0; i--) tree(null, 0);
  const templates = parts.filter((part) => part.within === null);
  const body = freshText(rng, names);
  parts.push({ name: body, kind: 'part', within: null, copy: null });
  for (let i = templates.length === 0 ? 0 : rng.int(6); i > 0; i--) {
    const starts = Array.from({ length: rng.int(3) }, () => ({ break: 1 + rng.int(4), slot: 1 + rng.int(60) }));
    parts.push({
      name: freshText(rng, names),
      kind: 'part',
      within: body,
      copy: { of: rng.pick(templates).name, starts },
    });
  }
  return parts;
}

const ATTRIBUTES = [
  'Dimmer',
  'Pan',
  'Tilt',
  'ColorAdd_R',
  'ColorAdd_UV',
  'Gobo1',
  'Shutter1Strobe',
  'Own thing',
  'Größe',
  'x.y',
];

function randomMode(rng: Rng, parts: readonly Part[], names: Set<string>): TypeMode {
  const tops = parts.filter((part) => part.within === null);
  const taken = new Set<string>();
  const channels: TypeChannel[] = [];
  for (let i = 1 + rng.int(8); i > 0; i--) {
    const channel = randomChannel(rng, rng.pick(parts.filter((part) => part.copy === null)).name, taken);
    if (channel !== undefined) channels.push(channel);
  }
  const root = tops.at(-1)?.name ?? '';
  // One channel that surely counts, so that the mode is of use.
  channels.push({ ...plainChannel(rng, root), offsets: [1 + rng.int(9)], resolution: 1 });
  return {
    name: freshText(rng, names),
    description: rng.pick(['', randomText(rng)]),
    root,
    channels: withConditions(rng, channels),
    firmware: rng.pick([[], ['1.0'], ['2.1', '2.2 beta']]),
  };
}

function plainChannel(rng: Rng, part: string): TypeChannel {
  const use = {
    attribute: 'Effects1',
    snap: 'No',
    master: 'None',
    functions: randomFunctions(rng, 1, 'Effects1'),
  } as const;
  return { part, break: 1, offsets: [], resolution: 1, highlight: null, initial: null, uses: [use] };
}

function randomChannel(rng: Rng, part: string, taken: Set<string>): TypeChannel | undefined {
  const resolution = (1 + rng.int(4)) as Resolution;
  const uses = Array.from({ length: rng.int(5) === 0 ? 2 : 1 }, () => rng.pick(ATTRIBUTES))
    .filter((attribute) => !taken.has(`${part}\n${attribute}`) && taken.add(`${part}\n${attribute}`))
    .map((attribute): ChannelUse => {
      const functions = randomFunctions(rng, resolution, attribute);
      return {
        attribute,
        snap: rng.pick(['No', 'Yes', 'On', 'Off']),
        master: rng.pick(['None', 'Grand', 'Group']),
        functions,
      };
    });
  const [first] = uses;
  if (first === undefined) return undefined;
  const real = rng.int(5) > 0;
  const last = uses.at(-1);
  const start = last?.functions.at(-1);
  const named = rng.int(3) === 0 && start !== undefined && start !== first.functions[0];
  return {
    part,
    break: rng.pick([1, 1, 2, 3, 'of-copy']),
    offsets: real ? Array.from({ length: resolution }, () => 1 + rng.int(60)) : [],
    resolution,
    highlight: rng.pick([null, highest(resolution)]),
    initial: named ? { attribute: last?.attribute ?? '', name: start.name } : null,
    uses,
  };
}

function randomFunctions(rng: Rng, resolution: Resolution, attribute: string): readonly ChannelFunction[] {
  const names = new Set<string>();
  return ascending(rng, 1 + rng.int(3), 0, highest(resolution)).map((from, at, starts) => ({
    name: freshText(rng, names),
    attribute: rng.pick([attribute, 'NoFeature', 'StrobeFrequency']),
    from,
    default: from,
    physical: rng.pick([null, { from: -270, to: 270.5 }, { from: 0, to: 1e-7 }]),
    when: null,
    ranges: rng.int(2) === 0 ? [] : randomRanges(rng, from, (starts[at + 1] ?? highest(resolution) + 1) - 1),
  }));
}

function randomRanges(rng: Rng, first: number, last: number): readonly NamedRange[] {
  return ascending(rng, 1 + rng.int(5), first, last).map((from) => ({
    name: rng.pick(['', randomText(rng)]),
    from,
    physical: rng.pick([null, { from: 0, to: 100 }]),
  }));
}

/** Different whole numbers from `first` on, ascending. */
function ascending(rng: Rng, count: number, first: number, last: number): number[] {
  const numbers = new Set([first]);
  for (let i = 1; i < count; i++) numbers.add(first + rng.int(last - first + 1));
  return [...numbers].sort((a, b) => a - b);
}

/** Lets some functions depend on another channel, or on one of its functions. */
function withConditions(rng: Rng, channels: readonly TypeChannel[]): readonly TypeChannel[] {
  return channels.map((channel) => {
    const master = rng.pick(channels);
    if (rng.int(4) > 0 || channelName(master) === channelName(channel)) return channel;
    const use = master.uses[0];
    const target = use?.functions.at(-1);
    const attribute = use?.attribute ?? '';
    const within = rng.int(2) === 0 || target === undefined ? null : { attribute, name: target.name };
    const when = { part: master.part, attribute, within, from: 0, to: rng.int(highest(master.resolution)) };
    const functions = (each: ChannelUse) => each.functions.map((one) => ({ ...one, when }));
    return { ...channel, uses: channel.uses.map((each) => ({ ...each, functions: functions(each) })) };
  });
}

function randomPhysical(rng: Rng): Physical {
  return {
    weight: rng.pick([null, 7.5, 31]),
    power: rng.pick([null, 480, 0.5]),
    powerFactor: rng.pick([null, 0.95]),
    voltage: rng.pick([null, { low: 100, high: 240 }]),
    connector: rng.pick(['', '16A-CEE', 'Größe']),
    perBreaker: rng.pick([
      [],
      [
        { breaker: 'B16', most: '8 at 230 V' },
        { breaker: 'C16', most: '12' },
      ],
    ]),
  };
}

function randomHazards(rng: Rng): Hazards {
  const kinds = Object.fromEntries(HAZARD_KINDS.map((kind) => [kind, rng.int(2) === 0]));
  return { ...NO_HAZARDS, ...kinds, laser: rng.pick([null, ...LASER_CLASSES]) };
}

/** A random type of which at least one mode can be used, so that a file of it is taken. */
export function usableType(rng: Rng): FixtureType {
  const type = randomType(rng);
  const part = type.parts.find(({ within }) => within === null)?.name ?? '';
  const dimmer: ChannelUse = { attribute: 'Dimmer', snap: 'No', master: 'None', functions: [] };
  const channel: TypeChannel = {
    part,
    break: 1,
    offsets: [1],
    resolution: 1,
    highlight: null,
    initial: null,
    uses: [dimmer],
  };
  const sound: TypeMode = { name: 'Sound', description: '', root: part, channels: [channel], firmware: [] };
  return { ...type, modes: [...type.modes, sound] };
}
