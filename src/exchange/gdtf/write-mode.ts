import type {
  ChannelFunction,
  ChannelUse,
  Condition,
  NamedRange,
  PhysicalRange,
  Resolution,
  TypeChannel,
  TypeMode,
} from '#engine/model/fixture-type.ts';
import { channelName } from '#engine/type/type-troubles.ts';
import { spellDmxValue } from './dmx-value-text.ts';
import { type Tag, tag } from './write-xml.ts';

export function describeMode(mode: TypeMode): Tag {
  const channels = new Map(mode.channels.map((channel) => [channelName(channel), channel]));
  return tag('DMXMode', { Name: mode.name, Geometry: mode.root, Description: mode.description }, [
    tag(
      'DMXChannels',
      {},
      mode.channels.map((channel) => describeChannel(channel, channels)),
    ),
  ]);
}

type Channels = ReadonlyMap<string, TypeChannel>;

function describeChannel(channel: TypeChannel, channels: Channels): Tag {
  const { initial, resolution, highlight, offsets } = channel;
  return tag(
    'DMXChannel',
    {
      DMXBreak: channel.break === 'of-copy' ? 'Overwrite' : channel.break,
      Offset: offsets.length === 0 ? 'None' : offsets.join(','),
      InitialFunction: initial === null ? undefined : functionLink(channel, initial),
      Highlight: highlight === null ? 'None' : spellDmxValue(highlight, resolution),
      Geometry: channel.part,
    },
    channel.uses.map((use) => describeUse(use, resolution, channels)),
  );
}

/** The link to a function; undefined when the channel has none of that name, since a link must lead somewhere. */
function functionLink(channel: TypeChannel, { attribute, name }: Condition['within'] & object): string | undefined {
  const use = channel.uses.find((each) => each.attribute === attribute);
  const exists = use?.functions.some((each) => each.name === name) ?? false;
  return exists ? `${channelName(channel)}.${attribute}.${name}` : undefined;
}

const describeUse = (use: ChannelUse, resolution: Resolution, channels: Channels): Tag =>
  tag(
    'LogicalChannel',
    { Attribute: use.attribute, Snap: use.snap, Master: use.master },
    use.functions.map((each) => describeFunction(each, resolution, channels)),
  );

const describeFunction = (each: ChannelFunction, resolution: Resolution, channels: Channels): Tag =>
  tag(
    'ChannelFunction',
    {
      Name: each.name,
      Attribute: each.attribute,
      DMXFrom: spellDmxValue(each.from, resolution),
      Default: spellDmxValue(each.default, resolution),
      ...physical(each.physical),
      ...condition(each.when, channels),
    },
    each.ranges.map((range) => describeRange(range, resolution)),
  );

const describeRange = ({ name, from, ...range }: NamedRange, resolution: Resolution): Tag =>
  tag('ChannelSet', { Name: name, DMXFrom: spellDmxValue(from, resolution), ...physical(range.physical) });

const physical = (range: PhysicalRange | null) => ({ PhysicalFrom: range?.from, PhysicalTo: range?.to });

function condition(when: Condition | null, channels: Channels): Tag['attributes'] {
  const master = when === null ? undefined : channels.get(`${when.part}_${when.attribute}`);
  if (when === null || master === undefined) return {};
  const link = when.within === null ? channelName(master) : functionLink(master, when.within);
  if (link === undefined) return {};
  const [from, to] = [when.from, when.to].map((value) => spellDmxValue(value, master.resolution));
  return { ModeMaster: link, ModeFrom: from, ModeTo: to };
}
