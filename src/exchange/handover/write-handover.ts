import type { HandoverAbout } from '#engine/handover/handover-about.ts';
import type { Sha256 } from '#engine/type/content-hash.ts';
import { writeZip } from '../archive/write-zip.ts';
import { HANDOVER_LIMITS } from './limits.ts';
import { HANDOVER_FORMAT, MANIFEST_SAYS, type Manifest, PARTS } from './manifest.ts';

/** What goes into a handover file beside what it says of itself. */
export interface HandoverTexts {
  /** The frozen rig, whose hash `about` names. */
  readonly rig: string;
  /** What the rules said of it, as JSON. */
  readonly findings: string;
  /** The same for a person with a spreadsheet, and for one with a text editor. */
  readonly patch: string;
  readonly readMe: string;
}

/** A handover as the bytes of one file, the same for the same handover; undefined when it is larger than any is read. [HO1] */
export async function writeHandover(
  about: HandoverAbout,
  texts: HandoverTexts,
  sha256: Sha256,
): Promise<Uint8Array | undefined> {
  const encoder = new TextEncoder();
  const files: Record<string, Uint8Array> = {};
  const parts: Record<string, Manifest['parts'][string]> = {};
  for (const [part, text] of Object.entries(texts)) {
    const name = PARTS[part as keyof HandoverTexts];
    const bytes = encoder.encode(text);
    files[name] = bytes;
    parts[name] = { bytes: bytes.length, sha256: await sha256(text) };
  }
  const manifest: Manifest = { format: HANDOVER_FORMAT, ...MANIFEST_SAYS, ...about, parts };
  const said = `${JSON.stringify(manifest, null, 2)}\n`;
  files[PARTS.manifest] = encoder.encode(said);
  files[PARTS.seal] = encoder.encode(`${await sha256(said)}\n`);
  if (isTooLarge(Object.values(files).map(({ length }) => length))) return undefined;
  const zip = writeZip(files);
  return zip.length > HANDOVER_LIMITS.bytes ? undefined : zip;
}

const isTooLarge = (lengths: readonly number[]) =>
  lengths.some((length) => length > HANDOVER_LIMITS.entryBytes) ||
  lengths.reduce((sum, length) => sum + length, 0) > HANDOVER_LIMITS.totalBytes;
