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
  /** Line of the file where they stand. */
  readonly line: number;
}

/** The parts of a type, parents before what is in them. Names are made unique, since everything else goes by them. */
export function readParts(geometries: XmlElement | undefined, notes: Notes): NamedParts {
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
  return linkCopies({ parts, called, line: geometries?.line ?? 1 }, notes);
}

/** The name in the type of the part at the top that the file calls so; undefined when there is none. */
export function topPart({ parts, called }: NamedParts, name: string): string | undefined {
  const meant = new Set(called.get(name));
  return parts.find((part) => part.within === null && meant.has(part.name))?.name;
}

function linkCopies(named: NamedParts, notes: Notes): NamedParts {
  const wanted = new Set(named.parts.flatMap(({ copy }) => copy?.of ?? []));
  const lifted = [...wanted].reduce((known, name) => liftPart(known, name, notes), named);
  const parts = lifted.parts.map((part): Part => {
    if (part.copy === null) return part;
    const of = topPart(lifted, part.copy.of);
    // A copy that lifting left behind names the part as the type does.
    if (of === undefined && !lifted.parts.some((each) => each.name === part.copy?.of)) {
      notes.defect('copy-of-nothing', lifted, part.copy.of);
    }
    return of === undefined ? part : { ...part, copy: { ...part.copy, of } };
  });
  return { ...lifted, parts };
}

/**
 * What a mode or a copy starts from has to stand at the top: from within another part it is taken out, with a copy left in its
 * place, which takes the same slots.
 */
export function liftPart(named: NamedParts, name: string, notes: Notes): NamedParts {
  const [within] = named.called.get(name) ?? [];
  if (name === '' || within === undefined || topPart(named, name) !== undefined) return named;
  notes.defect('part-within', named, name);
  const place = claimName(within, new Set(named.parts.map((part) => part.name)));
  const parts = named.parts.flatMap((part): readonly Part[] => {
    if (part.name !== within) return [part];
    const copy: Part = { name: place, kind: 'part', within: part.within, copy: { of: within, starts: [] } };
    return [{ ...part, within: null }, copy];
  });
  return { ...named, parts };
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
