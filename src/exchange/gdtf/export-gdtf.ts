import type { FixtureType } from '#engine/model/fixture-type.ts';
import { writeZip } from '../archive/write-zip.ts';
import { OWN_NOTES_FILE, writeOwnNotes } from './own-notes.ts';
import { renameAll } from './rename.ts';
import { SpelledNames } from './spelled-names.ts';
import { describeType } from './write-description.ts';
import { writeXml } from './write-xml.ts';

/**
 * A `.gdtf` file of a type, version 1.2, the same bytes for the same type. What the format has no place for goes into a
 * file of ours beside the description; importing the whole gives the same type. Source: GDTF (DIN SPEC 15800).
 */
export function exportGdtf(type: FixtureType): Uint8Array {
  const names = new SpelledNames();
  const spelled = renameAll(type, names.spell);
  const { settings, hazards, physical } = type;
  return writeZip({
    'description.xml': new TextEncoder().encode(writeXml(describeType(spelled))),
    [OWN_NOTES_FILE]: writeOwnNotes({
      format: 1,
      names: names.changed(),
      settings,
      hazards,
      perBreaker: physical.perBreaker,
      firmware: spelled.modes.filter((mode) => mode.firmware.length > 0).map((mode) => [mode.name, mode.firmware]),
    }),
  });
}

/** `Maker@Model.gdtf`, in signs that every file system takes. Source: GDTF (DIN SPEC 15800), file name. */
export function gdtfFileName({ maker, model }: FixtureType): string {
  const clean = (text: string) => text.replace(/[^\p{L}\p{N} _+()-]/gu, '_').trim() || 'Unnamed';
  return `${clean(maker)}@${clean(model)}.gdtf`;
}
