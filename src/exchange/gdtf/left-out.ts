import { LEFT_PARTS, type LeftOut } from '#engine/type/gdtf-report.ts';
import { elementAt } from './elements.ts';
import type { XmlElement } from './read-xml.ts';

const PLACES: Readonly<Partial<Record<LeftOut['what'], readonly string[]>>> = {
  wheels: ['Wheels'],
  emitters: ['PhysicalDescriptions', 'Emitters'],
  filters: ['PhysicalDescriptions', 'Filters'],
  models: ['Models'],
  revisions: ['Revisions'],
  presets: ['FTPresets'],
  protocols: ['Protocols'],
};

const ELEMENTS: Readonly<Record<string, LeftOut['what']>> = {
  Relation: 'relations',
  FTMacro: 'macros',
  WiringObject: 'wiring',
};

/** Whether elements of this name are counted wherever they stand. */
export const isCounted = (name: string): boolean => Object.hasOwn(ELEMENTS, name);

export interface Counted {
  /** Elements that are counted, by name. */
  readonly counted: ReadonlyMap<string, number>;
  readonly otherFiles: number;
}

/** What a description holds that a fixture type has no place for, by kind. */
export function leftOut(fixtureType: XmlElement, { counted, otherFiles }: Counted): readonly LeftOut[] {
  const counts = new Map<LeftOut['what'], number>([['files', otherFiles]]);
  for (const what of LEFT_PARTS) {
    const path = PLACES[what];
    if (path !== undefined) counts.set(what, elementAt(fixtureType, ...path)?.children.length ?? 0);
  }
  for (const [name, what] of Object.entries(ELEMENTS)) counts.set(what, counted.get(name) ?? 0);
  return LEFT_PARTS.map((what) => ({ what, count: counts.get(what) ?? 0 })).filter((each) => each.count > 0);
}
