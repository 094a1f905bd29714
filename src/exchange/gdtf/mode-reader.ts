import type { TypeMode } from '#engine/model/fixture-type.ts';
import { childrenOf, elementAt, textOf } from './elements.ts';
import type { Notes } from './notes.ts';
import type { OwnNotes } from './own-notes.ts';
import { readMode } from './read-mode.ts';
import { claimName, liftPart, type NamedParts, readParts } from './read-parts.ts';
import type { ElementEnded, XmlElement } from './read-xml.ts';

export interface PartsAndModes extends NamedParts {
  readonly modes: readonly TypeMode[];
}

/**
 * Reads modes one by one as their elements end, so that nothing of them is kept but what they say: large files are large because of
 * their modes. It needs the parts for that; where a file has them behind its modes, those are read at the end.
 */
export class ModeReader {
  private readonly modes: TypeMode[] = [];
  private readonly names = new Set<string>();
  private readonly firmware: ReadonlyMap<string, readonly string[]>;
  private named: NamedParts | undefined;
  /** The element whose modes count: the first one. */
  private home: XmlElement | undefined;

  constructor(
    private readonly notes: Notes,
    own: OwnNotes | undefined,
  ) {
    this.firmware = new Map(own?.firmware ?? []);
  }

  readonly ended: ElementEnded = (element, within) => {
    if (element.name === 'Geometries' && within.name === 'FixtureType') this.named ??= readParts(element, this.notes);
    if (element.name !== 'DMXMode' || within.name !== 'DMXModes') return 'keep';
    this.home ??= within;
    if (this.named === undefined || this.home !== within) return 'keep';
    this.take(element, this.named);
    return 'done';
  };

  /** All parts and modes, once the whole file has been read. */
  finish(fixtureType: XmlElement): PartsAndModes {
    const modes = childrenOf(elementAt(fixtureType, 'DMXModes'), 'DMXMode').slice(this.modes.length);
    this.named ??= readParts(elementAt(fixtureType, 'Geometries'), this.notes);
    for (const mode of modes) this.take(mode, this.named);
    return { ...this.named, modes: this.modes };
  }

  private take(element: XmlElement, known: NamedParts): void {
    const named = liftPart(known, textOf(element, 'Geometry'), this.notes);
    this.named = named;
    const wanted = textOf(element, 'Name');
    if (this.names.has(wanted)) this.notes.defect('mode-named-twice', element, wanted);
    const name = claimName(wanted, this.names);
    this.modes.push({ ...readMode(element, name, named, this.notes), firmware: this.firmware.get(name) ?? [] });
  }
}
