import { createHash } from 'node:crypto';
import { ArchiveManifest } from '#wire/crew-archive.ts';

export const MANIFEST = 'manifest.json';

/** A manifest as text, with its seal: the SHA-256 of the same text without it. */
export function writeManifest(manifest: Omit<ArchiveManifest, 'seal'>): string {
  const seal = createHash('sha256').update(spelled(manifest)).digest('hex');
  return spelled({ ...manifest, seal });
}

/** The manifest of a text, if it is what was written, to the letter. */
export function readManifest(text: string): ArchiveManifest | 'changed' | { readonly newer: number } {
  const json = parsed(text);
  const format = typeof json === 'object' && json !== null && 'format' in json ? json.format : undefined;
  if (typeof format === 'number' && format > 1) return { newer: format };
  const read = ArchiveManifest.safeParse(json);
  if (!read.success) return 'changed';
  const { seal: _, ...rest } = read.data;
  return writeManifest(rest) === text ? read.data : 'changed';
}

export async function sha256Of(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  return Buffer.from(await crypto.subtle.digest('SHA-256', bytes)).toString('hex');
}

const spelled = (value: object): string => JSON.stringify(value, null, 2);

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    // No manifest of ours: whoever asks hears that it was changed.
    return undefined;
  }
}
