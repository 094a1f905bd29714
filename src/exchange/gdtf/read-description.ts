import { ok, type Result, refuse } from '#base/result.ts';
import {
  type FixtureType,
  type Hazards,
  NO_HAZARDS,
  NO_SETTINGS,
  type Part,
  type TypeMode,
} from '#engine/model/fixture-type.ts';
import { hazardsOfAttribute } from '#engine/type/attributes.ts';
import type { DescriptionRefusal } from '#engine/type/file-refusal.ts';
import type { GdtfReport } from '#engine/type/gdtf-report.ts';
import { type TypeTrouble, typeTroubles } from '#engine/type/type-troubles.ts';
import { elementAt, textOf } from './elements.ts';
import { leftOut } from './left-out.ts';
import type { ModeReader } from './mode-reader.ts';
import type { Notes } from './notes.ts';
import type { OwnNotes } from './own-notes.ts';
import { readPhysical } from './read-physical.ts';
import type { XmlElement } from './read-xml.ts';
import { renameAll } from './rename.ts';

export interface GdtfImport {
  readonly type: FixtureType;
  readonly report: GdtfReport;
}

export interface Reading {
  readonly notes: Notes;
  readonly own: OwnNotes | undefined;
  /** Has been told of every element that ended. */
  readonly reader: ModeReader;
  /** Elements that are counted, by name, in the whole description. */
  readonly counted: ReadonlyMap<string, number>;
  /** Files of the archive beside the description. */
  readonly otherFiles: number;
}

/** A fixture type of a description's elements. */
export function readDescription(root: XmlElement, reading: Reading): Result<GdtfImport, DescriptionRefusal> {
  const element = elementAt(root, 'FixtureType');
  if (root.name !== 'GDTF' || element === undefined) return refuse({ code: 'not-gdtf', root: root.name });
  const { notes, own } = reading;
  const version = readVersion(root, notes);
  const type = readType(element, reading);
  if (notes.oldOffsets > 0) notes.guesses.push({ kind: 'old-offsets', channels: notes.oldOffsets });
  if (notes.oldDefaults > 0) notes.guesses.push({ kind: 'old-defaults', channels: notes.oldDefaults });
  const renamed = own === undefined || own.names.length === 0 ? type : renameAll(type, renaming(own));
  const troubles = typeTroubles(renamed);
  const unusable = troubles.filter(({ kind }) => UNUSABLE.has(kind));
  if (new Set(unusable.map(({ mode }) => mode)).size === renamed.modes.length) {
    return refuse({ code: 'no-usable-mode', modes: renamed.modes.length, trouble: unusable[0] ?? null });
  }
  const report: GdtfReport = {
    version,
    read: {
      modes: type.modes.length,
      channels: type.modes.reduce((sum, mode) => sum + mode.channels.length, 0),
      parts: type.parts.length,
    },
    defects: notes.defects,
    moreDefects: notes.moreDefects,
    guesses: notes.guesses,
    left: leftOut(element, reading),
    troubles,
  };
  return ok({ type: renamed, report });
}

/** With one of these nobody can say what a mode listens to; with another mode beside it, it is only reported. */
const UNUSABLE: ReadonlySet<TypeTrouble['kind']> = new Set(['no-slots', 'only-virtual', 'slot-taken-twice']);

function renaming({ names }: OwnNotes): (name: string) => string {
  const known = new Map(names);
  return (name) => known.get(name) ?? name;
}

const VERSIONS = new Set(['0.88', '1.0', '1.1', '1.2']);

function readVersion(root: XmlElement, notes: Notes): string {
  const version = textOf(root, 'DataVersion').trim();
  if (!VERSIONS.has(version)) notes.defect('version', root, version);
  return version;
}

function readType(element: XmlElement, { notes, own, reader }: Reading): FixtureType {
  const { parts, modes } = reader.finish(element);
  const model = textOf(element, 'Name');
  if (model === '') notes.defect('no-name', element, textOf(element, 'LongName'));
  return {
    maker: textOf(element, 'Manufacturer'),
    model: model === '' ? textOf(element, 'LongName') : model,
    shortName: textOf(element, 'ShortName'),
    description: textOf(element, 'Description'),
    guid: readGuid(element, notes),
    parts,
    modes,
    physical: { ...readPhysical(element, notes), perBreaker: own?.perBreaker ?? [] },
    settings: own?.settings ?? NO_SETTINGS,
    hazards: own?.hazards ?? guessHazards(parts, modes, notes),
  };
}

const GUID = /^[0-9A-F]{8}-[0-9A-F]{4}-[0-9A-F]{4}-[0-9A-F]{4}-[0-9A-F]{12}$/;

function readGuid(element: XmlElement, notes: Notes): string {
  const text = textOf(element, 'FixtureTypeID').trim().toUpperCase();
  if (text === '' || GUID.test(text)) return text;
  notes.defect('guid', element, text);
  return '';
}

/** A file states no hazards; its attributes and lasers give some away. */
function guessHazards(parts: readonly Part[], modes: readonly TypeMode[], notes: Notes): Hazards {
  const found: { -readonly [K in keyof Hazards]: Hazards[K] } = { ...NO_HAZARDS };
  if (parts.some((part) => part.kind === 'laser')) {
    found.laser = 'unknown';
    notes.guesses.push({ kind: 'laser' });
  }
  for (const attribute of attributesOf(modes)) {
    for (const hazard of hazardsOfAttribute(attribute)) {
      if (!found[hazard]) notes.guesses.push({ kind: 'hazard', hazard, from: attribute });
      found[hazard] = true;
    }
  }
  return found;
}

function attributesOf(modes: readonly TypeMode[]): ReadonlySet<string> {
  const attributes = new Set<string>();
  for (const mode of modes) {
    for (const use of mode.channels.flatMap((channel) => channel.uses)) {
      attributes.add(use.attribute);
      for (const each of use.functions) attributes.add(each.attribute);
    }
  }
  return attributes;
}
