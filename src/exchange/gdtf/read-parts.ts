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

/** The parts of a type, parents before what is in them. Names are made unique, since everything else goes by them. */
export function readParts(geometries: XmlElement | undefined, notes: Notes): readonly Part[] {
  const parts: Part[] = [];
  const names = new Set<string>();
  const walk = (element: XmlElement, within: string | null): void => {
    const name = uniqueName(element, names, notes);
    const copy = element.name === REFERENCE ? readCopy(element, notes) : null;
    parts.push({ name, kind: KINDS[element.name] ?? 'part', within, copy });
    for (const child of element.children) if (!NO_PARTS.has(child.name)) walk(child, name);
  };
  for (const element of geometries?.children ?? []) if (!NO_PARTS.has(element.name)) walk(element, null);
  const tops = new Set(parts.filter((part) => part.within === null).map((part) => part.name));
  for (const { copy } of parts) {
    if (copy !== null && !tops.has(copy.of)) notes.defect('copy-of-nothing', geometries ?? { line: 1 }, copy.of);
  }
  return parts;
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
