import { ok, type Result, refuse } from '#base/result.ts';
import type { FixtureType } from '#engine/model/fixture-type.ts';
import type { GdtfRefusal } from '#engine/type/file-refusal.ts';
import { exportGdtf } from '#exchange/gdtf/export-gdtf.ts';
import { importGdtf } from '#exchange/gdtf/import-gdtf.ts';
import { CAPS } from '#wire/caps.ts';
import { unpack } from '../archive/unpack.ts';
import { type RevisionContent, revisionContent } from '../tasks/library/revision-content.ts';
import { namedByFile } from './named-by-file.ts';

/** What a worker is asked to do: read a file that is called `name`, or write one of a revision's content. */
export type GdtfJob =
  | { readonly kind: 'read'; readonly bytes: Uint8Array<ArrayBuffer>; readonly name: string }
  | { readonly kind: 'write'; readonly content: string };

/** Why a file did not become a revision: what `importGdtf` says of it, or one of ours. */
export type FileRefusal = GdtfRefusal | { readonly code: 'type-unnamed' } | { readonly code: 'type-too-large' };

export type ReadOutcome = Result<RevisionContent, FileRefusal>;

export async function readFile(bytes: Uint8Array, name: string): Promise<ReadOutcome> {
  const imported = await importGdtf(bytes, { unpack, nesting: 1 });
  if (!imported.ok) return imported;
  const named = namedByFile(imported.value, name);
  if (named === undefined) return refuse({ code: 'type-unnamed' });
  const content = await revisionContent(named.type, named.report);
  return content.content.length > CAPS.typeContent ? refuse({ code: 'type-too-large' }) : ok(content);
}

export function writeFile(content: string): Uint8Array {
  const type: FixtureType = JSON.parse(content);
  return exportGdtf(type);
}
