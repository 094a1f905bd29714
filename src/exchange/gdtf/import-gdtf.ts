import { type Result, refuse } from '#base/result.ts';
import type { GdtfRefusal } from '#engine/type/file-refusal.ts';
import type { Unpack, Unpacked } from '../archive/archive.ts';
import { decodeDescription } from './decode-description.ts';
import { isCounted } from './left-out.ts';
import { GDTF_LIMITS } from './limits.ts';
import { ModeReader } from './mode-reader.ts';
import { Notes } from './notes.ts';
import { OWN_NOTES_FILE, type OwnNotes, readOwnNotes } from './own-notes.ts';
import { type GdtfImport, readDescription } from './read-description.ts';
import { readXml } from './read-xml.ts';

/**
 * Reads a `.gdtf` file of versions 0.88 to 1.2, leniently: what is wrong with it is in the report. Refused, never thrown,
 * when nothing usable is in it. Source: GDTF (DIN SPEC 15800).
 */
export async function importGdtf(
  bytes: Uint8Array,
  { unpack, nesting }: { readonly unpack: Unpack; readonly nesting: number },
): Promise<Result<GdtfImport, GdtfRefusal>> {
  const wants = (name: string) => isDescription(name) || name === OWN_NOTES_FILE;
  const unpacked = await unpack(bytes, { limits: GDTF_LIMITS, nesting, wants });
  return unpacked.ok ? readUnpacked(unpacked.value) : unpacked;
}

const DESCRIPTION = 'description.xml';

// At the root it stands by the standard; in one folder it stands when somebody zipped the folder itself.
const isDescription = (name: string) => /^([^/]+\/)?description\.xml$/i.test(name);

function readUnpacked({ files, others }: Unpacked): Result<GdtfImport, GdtfRefusal> {
  const names = [...files.keys()].filter(isDescription);
  const name = names.find((each) => each === DESCRIPTION) ?? names.sort((a, b) => a.length - b.length)[0];
  const file = name === undefined ? undefined : files.get(name);
  if (name === undefined || file === undefined) return refuse({ code: 'no-description' });
  const notes = new Notes();
  if (name !== DESCRIPTION) notes.defect('not-at-root', { line: 1 }, name);
  const own = ownNotes(files, notes);
  const reader = new ModeReader(notes, own);
  const counted = new Map<string, number>();
  const root = readXml(decodeDescription(file, notes), GDTF_LIMITS, (element, within) => {
    if (isCounted(element.name)) counted.set(element.name, (counted.get(element.name) ?? 0) + 1);
    return reader.ended(element, within);
  });
  if (!root.ok) return root;
  return readDescription(root.value, { notes, own, reader, counted, otherFiles: others.length });
}

function ownNotes(files: Unpacked['files'], notes: Notes): OwnNotes | undefined {
  const file = files.get(OWN_NOTES_FILE);
  const own = file === undefined ? undefined : readOwnNotes(file);
  if (file !== undefined && own === undefined) notes.defect('notes-file', { line: 1 }, OWN_NOTES_FILE);
  return own;
}
