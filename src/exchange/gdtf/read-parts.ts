import type { Copy, Part, PartKind } from '#engine/model/fixture-type.ts';
import { isBreak } from '#engine/type/slots-of.ts';
import { childrenOf } from './elements.ts';
import type { Notes } from './notes.ts';
import type { XmlElement } from './read-xml.ts';

const KINDS: Readonly<Record<string, PartKind>> = { Axis: 'axis', Beam: 'beam', Laser: 'laser' };
// What may stand within a geometry and is none.
const NO_PARTS = new Set(['Break', 'Protocol', 'PinPatch']);
// These extend the reference in the schema, but bring no cells of their own into a mode.
const REFERENCE = 'GeometryReference';

/** The parts of a type, and what the file calls them: a name that stands there twice means several. */
export interface NamedParts {
  readonly parts: readonly Part[];
  readonly called: ReadonlyMap<string, readonly string[]>;
}

/**
 * The parts of a type, parents before what is in them. Names are made unique, since everything else goes by them. `starts`:
 * the parts that modes start from. What they or a copy start from has to stand at the top: from within another part it is
 * taken out, with a copy left in its place, which takes the same slots.
 */
export function readParts(geometries: XmlElement | undefined, starts: ReadonlySet<string>, notes: Notes): NamedParts {
  const parts: Part[] = [];
  const names = new Set<string>();
  const called = new Map<string, string[]>();
  const walk = (element: XmlElement, within: string | null): void => {
    const name = uniqueName(element, names, notes);
    const original = element.attributes.Name ?? '';
    called.set(original, [...(called.get(original) ?? []), name]);
    const copy = element.name === REFERENCE ? readCopy(element, notes) : null;
    parts.push({ name, kind: KINDS[element.name] ?? 'part', within, copy });
    for (const child of element.children) if (!NO_PARTS.has(child.name)) walk(child, name);
  };
  for (const element of geometries?.children ?? []) if (!NO_PARTS.has(element.name)) walk(element, null);
  const wanted = new Set([...starts, ...parts.flatMap(({ copy }) => copy?.of ?? [])]);
  const lifted = liftParts(parts, { wanted, called, names, notes, at: geometries ?? { line: 1 } });
  const tops = new Set(lifted.filter((part) => part.within === null).map((part) => part.name));
  const top = (name: string) => (called.get(name) ?? []).find((each) => tops.has(each));
  const linked = lifted.map((part): Part => {
    if (part.copy === null || tops.has(part.copy.of)) return part;
    const of = top(part.copy.of);
    if (of === undefined) notes.defect('copy-of-nothing', geometries ?? { line: 1 }, part.copy.of);
    return of === undefined ? part : { ...part, copy: { ...part.copy, of } };
  });
  return { parts: linked, called };
}

interface Lifting {
  /** What has to stand at the top, as the file calls it. */
  readonly wanted: ReadonlySet<string>;
  readonly called: ReadonlyMap<string, readonly string[]>;
  readonly names: Set<string>;
  readonly notes: Notes;
  readonly at: { readonly line: number };
}

function liftParts(parts: readonly Part[], { wanted, called, names, notes, at }: Lifting): readonly Part[] {
  const tops = new Set(parts.filter((part) => part.within === null).map((part) => part.name));
  const within = new Set<string>();
  for (const name of wanted) {
    const [first, ...others] = called.get(name) ?? [];
    if (first === undefined || [first, ...others].some((each) => tops.has(each))) continue;
    within.add(first);
    notes.defect('part-within', at, name);
  }
  return parts.flatMap((part): readonly Part[] => {
    if (!within.has(part.name)) return [part];
    const place = claimName(part.name, names);
    const copy: Part = { name: place, kind: 'part', within: part.within, copy: { of: part.name, starts: [] } };
    return [{ ...part, within: null }, copy];
  });
}

function uniqueName(element: XmlElement, names: Set<string>, notes: Notes): string {
  const wanted = element.attributes.Name ?? '';
  if (wanted === '') notes.defect('part-unnamed', element, element.name);
  else if (names.has(wanted)) notes.defect('part-named-twice', element, wanted);
  return claimName(wanted === '' ? element.name : wanted, names);
}

/** The name, or the next free one of its kind: `Head (2)`. */
export function claimName(wanted: string, names: Set<string>): string {
  let name = wanted;
  for (let count = 2; names.has(name); count++) name = `${wanted} (${count})`;
  names.add(name);
  return name;
}

function readCopy(element: XmlElement, notes: Notes): Copy {
  const starts = childrenOf(element, 'Break').map((each) => ({
    break: readBreak(each, notes),
    slot: readOffset(each, notes),
  }));
  return { of: element.attributes.Geometry ?? '', starts };
}

/** The break an attribute names, 1 when it names none. */
export function readBreak(element: XmlElement, notes: Notes): number {
  const text = element.attributes.DMXBreak?.trim() ?? '';
  if (text === '') return 1;
  const value = Number(text);
  if (isBreak(value)) return value;
  notes.defect('break', element, text);
  return 1;
}

/** `15`, or `2.128` for slot 128 of the second universe. Source: GDTF (DIN SPEC 15800), DMXAddress. */
function readOffset(element: XmlElement, notes: Notes): number {
  const text = element.attributes.DMXOffset?.trim() ?? '';
  if (text === '') return 1;
  const [, universe = '1', slot = ''] = /^(?:(\d{1,5})\.)?(\d{1,8})$/.exec(text) ?? [];
  const value = (Number(universe) - 1) * 512 + Number(slot);
  if (slot !== '' && value >= 1) return value;
  notes.defect('offset', element, text);
  return 1;
}
