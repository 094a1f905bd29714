import type {
  ChannelFunction,
  ChannelUse,
  Condition,
  FunctionName,
  NamedRange,
  PhysicalRange,
  Resolution,
  TypeChannel,
  TypeMode,
} from '#engine/model/fixture-type.ts';
import { reachedParts } from '#engine/type/reached-parts.ts';
import { functionSpans } from '#engine/type/value-spans.ts';
import { asResolution, bytesOf, readDmxValue } from './dmx-value-text.ts';
import { childrenOf, elementAt, textOf } from './elements.ts';
import { type FoundChannel, functionName, NO_FEATURE } from './found-channel.ts';
import { ModeLinks } from './mode-links.ts';
import type { Notes } from './notes.ts';
import { type NamedParts, readBreak, topPart } from './read-parts.ts';
import type { XmlElement } from './read-xml.ts';

/** A mode as a description has it. `name` is handed in, since it has been made unique. */
export function readMode(element: XmlElement, name: string, named: NamedParts, notes: Notes): TypeMode {
  const { parts } = named;
  const root = readRoot(element, named, notes);
  const partOf = partFinder(named, root);
  const found = childrenOf(elementAt(element, 'DMXChannels'), 'DMXChannel').map((each) =>
    findChannel(each, partOf, notes),
  );
  const links = new ModeLinks(found);
  const known = new Set(parts.map((part) => part.name));
  const channels = found.map((each) => readChannel(each, links, notes));
  for (const [at, channel] of channels.entries()) {
    if (!known.has(channel.part)) notes.defect('channel-part', found[at]?.element ?? element, channel.part);
  }
  return { name, description: textOf(element, 'Description'), root, channels, firmware: [] };
}

function readRoot(element: XmlElement, named: NamedParts, notes: Notes): string {
  const wanted = textOf(element, 'Geometry');
  const root = wanted === '' ? undefined : topPart(named, wanted);
  if (root !== undefined) return root;
  notes.defect('mode-root', element, wanted);
  return named.parts.find((part) => part.within === null)?.name ?? wanted;
}

/** Of several parts that the file calls the same, a channel means the one that its mode reaches. */
function partFinder({ parts, called }: NamedParts, root: string): (name: string) => string {
  const reached = reachedParts(parts, [root]);
  return (name) => {
    const names = called.get(name) ?? [name];
    return names.find((each) => reached.has(each)) ?? names[0] ?? name;
  };
}

function findChannel(element: XmlElement, partOf: (name: string) => string, notes: Notes): FoundChannel {
  const offsets = readOffsets(element, notes);
  const resolution = asResolution(offsets.length > 0 ? offsets.length : widestValue(element));
  return { element, part: partOf(textOf(element, 'Geometry')), offsets, resolution };
}

function readOffsets(element: XmlElement, notes: Notes): readonly number[] {
  const text = element.attributes.Offset?.trim();
  if (text === undefined) return readOldOffsets(element, notes);
  if (text === '' || /^none$/i.test(text)) return [];
  const offsets = text.split(',').map((each) => Number(each.trim() === '' ? Number.NaN : each));
  if (offsets.every(isOffset)) return offsets;
  notes.defect('offset', element, text);
  return offsets.filter(isOffset);
}

const isOffset = (value: number) => Number.isInteger(value) && value >= 1 && value <= 1_000_000;

// Before version 1.1 each byte had an attribute of its own (from memory).
const OLD_BYTES = ['Coarse', 'Fine', 'Ultra', 'Uber'] as const;

function readOldOffsets(element: XmlElement, notes: Notes): readonly number[] {
  const offsets: number[] = [];
  for (const name of OLD_BYTES) {
    const value = Number(element.attributes[name]?.trim() ?? '');
    if (!isOffset(value)) break;
    offsets.push(value);
  }
  if (offsets.length > 0) notes.oldOffsets += 1;
  return offsets;
}

/** The most bytes that any value of a channel is written with. */
function widestValue(element: XmlElement): number {
  const { Highlight, Default, DMXFrom } = element.attributes;
  const own = Math.max(bytesOf(Highlight), bytesOf(Default), bytesOf(DMXFrom));
  return element.children.reduce((most, child) => Math.max(most, widestValue(child)), own);
}

function readChannel(found: FoundChannel, links: ModeLinks, notes: Notes): TypeChannel {
  const { element, offsets, resolution } = found;
  const uses = childrenOf(element, 'LogicalChannel').map((each) => readUse(each, resolution, links, notes));
  if (uses.length === 0) notes.defect('channel-empty', element, textOf(element, 'Geometry'));
  const channel: TypeChannel = {
    part: found.part,
    break: /^\s*overwrite\s*$/i.test(textOf(element, 'DMXBreak')) ? 'of-copy' : readBreak(element, notes),
    offsets,
    resolution,
    highlight: readDmxValue(element, 'Highlight', resolution, notes),
    initial: readInitial(found, links, notes),
    uses,
  };
  return withOldDefault(channel, element, notes);
}

function readInitial({ element }: FoundChannel, links: ModeLinks, notes: Notes): FunctionName | null {
  const text = textOf(element, 'InitialFunction');
  if (text === '') return null;
  const link = links.functionOf(text);
  if (link === undefined || link.channel.element !== element) {
    notes.defect('link', element, `InitialFunction="${text}"`);
    return null;
  }
  return links.isFirst(link) ? null : { attribute: link.attribute, name: link.name };
}

/** Up to version 1.0 the channel held the default: it belongs to the function it lies in. */
function withOldDefault(channel: TypeChannel, element: XmlElement, notes: Notes): TypeChannel {
  const value = readDmxValue(element, 'Default', channel.resolution, notes);
  const [first] = channel.uses;
  if (value === null || first === undefined || channel.initial !== null) return channel;
  const spans = functionSpans(first, channel.resolution);
  const at = spans.findIndex((span) => value >= span.from && value <= span.to);
  const target = first.functions[at];
  if (target === undefined) return channel;
  notes.oldDefaults += 1;
  const functions = first.functions.map((each) => (each === target ? { ...each, default: value } : each));
  const initial = at === 0 ? null : { attribute: first.attribute, name: target.name };
  return { ...channel, initial, uses: [{ ...first, functions }, ...channel.uses.slice(1)] };
}

const SNAPS = ['No', 'Yes', 'On', 'Off'] as const;
const MASTERS = ['None', 'Grand', 'Group'] as const;

function readUse(element: XmlElement, resolution: Resolution, links: ModeLinks, notes: Notes): ChannelUse {
  return {
    attribute: textOf(element, 'Attribute'),
    snap: SNAPS.find((each) => each === textOf(element, 'Snap')) ?? 'No',
    master: MASTERS.find((each) => each === textOf(element, 'Master')) ?? 'None',
    functions: childrenOf(element, 'ChannelFunction').map((each, at) =>
      readFunction(each, at, resolution, links, notes),
    ),
  };
}

function readFunction(
  element: XmlElement,
  at: number,
  resolution: Resolution,
  links: ModeLinks,
  notes: Notes,
): ChannelFunction {
  return {
    name: functionName(element, at),
    attribute: element.attributes.Attribute ?? NO_FEATURE,
    from: readDmxValue(element, 'DMXFrom', resolution, notes) ?? 0,
    default: readDmxValue(element, 'Default', resolution, notes) ?? 0,
    physical: readPhysical(element, notes),
    when: readCondition(element, links, notes),
    ranges: childrenOf(element, 'ChannelSet').map((each) => readRange(each, resolution, notes)),
  };
}

function readRange(element: XmlElement, resolution: Resolution, notes: Notes): NamedRange {
  return {
    name: textOf(element, 'Name'),
    from: readDmxValue(element, 'DMXFrom', resolution, notes) ?? 0,
    physical: readPhysical(element, notes),
  };
}

function readPhysical(element: XmlElement, notes: Notes): PhysicalRange | null {
  const from = notes.number(element, 'PhysicalFrom');
  const to = notes.number(element, 'PhysicalTo');
  return from === null && to === null ? null : { from: from ?? 0, to: to ?? 1 };
}

function readCondition(element: XmlElement, links: ModeLinks, notes: Notes): Condition | null {
  const text = textOf(element, 'ModeMaster');
  if (text === '') return null;
  const whole = links.channelOf(text);
  const link = whole === undefined ? links.functionOf(text) : undefined;
  const master = whole ?? link?.channel;
  if (master === undefined) {
    notes.defect('link', element, `ModeMaster="${text}"`);
    return null;
  }
  return {
    part: master.part,
    attribute: textOf(elementAt(master.element, 'LogicalChannel') ?? master.element, 'Attribute'),
    within: link === undefined ? null : { attribute: link.attribute, name: link.name },
    from: readDmxValue(element, 'ModeFrom', master.resolution, notes) ?? 0,
    to: readDmxValue(element, 'ModeTo', master.resolution, notes) ?? 0,
  };
}
