import type { z } from 'zod';
import { CAPS } from '#wire/caps.ts';
import {
  ArchivedAudit,
  ArchivedCrew,
  ArchivedDraft,
  ArchivedMembers,
  ArchivedPeople,
  ArchivedRig,
  ArchivedType,
  type ArchiveManifest,
} from '#wire/crew-archive.ts';
import { unpack } from '../../archive/unpack.ts';
import { ArchiveRefused, unreadable } from './archive-refused.ts';
import { MANIFEST, readManifest, sha256Of } from './manifest.ts';
import { PartsIn } from './parts-in.ts';

/** What an archive says beside its logs, frozen rigs and types. `folders` leads to those. */
export interface OpenedArchive {
  readonly manifest: ArchiveManifest;
  readonly crew: z.output<typeof ArchivedCrew>;
  readonly people: z.output<typeof ArchivedPeople>;
  readonly audit: z.output<typeof ArchivedAudit>;
  readonly types: ReadonlyMap<string, ArchivedType>;
  readonly drafts: ReadonlyMap<string, ArchivedDraft>;
  readonly rigs: ReadonlyMap<string, ArchivedRig>;
  /** Every folder of a type, a draft or a rig with what is in it beside its description, in the order of the archive. */
  folders(): AsyncGenerator<{ readonly folder: string; readonly parts: PartsIn }>;
}

const LIMITS = {
  bytes: CAPS.archiveFile,
  entries: CAPS.archiveParts + 1,
  entryBytes: CAPS.archivePart,
  totalBytes: CAPS.archiveTotal,
  nesting: 0,
} as const;

/** A line of the manifest for each part takes about 200 bytes. */
const MANIFEST_BYTES = CAPS.archiveParts * 500;

/** Bytes of parts that are unpacked at once, unless one folder has more. */
const BATCH = 32 * 1024 * 1024;
const FOLDER = /^(?:types|drafts|rigs)\/[1-9]\d{0,5}(?=\/)/;
const ABOUT = /^(?:types\/\d+\/type|drafts\/\d+\/draft|rigs\/\d+\/rig|audit\/\d+|crew|members|people)\.json$/;

/** Opens an archive: every part is there, none is there beside them, and each is what the manifest says. Throws `ArchiveRefused`. */
export async function openArchive(bytes: Uint8Array): Promise<OpenedArchive> {
  const manifest = await manifestOf(bytes);
  const about = new Map<string, Uint8Array>();
  for (const batch of batchesOf(manifest))
    for (const [name, part] of await unpackChecked(bytes, batch)) if (ABOUT.test(name)) about.set(name, part);
  const parts = new PartsIn(about);
  const opened = {
    manifest,
    crew: parts.json('crew.json', ArchivedCrew),
    people: parts.json('people.json', ArchivedPeople),
    types: described(manifest, parts, ['types', 'type', ArchivedType]),
    drafts: described(manifest, parts, ['drafts', 'draft', ArchivedDraft]),
    rigs: described(manifest, parts, ['rigs', 'rig', ArchivedRig]),
    audit: auditOf(parts),
    folders: () => foldersOf(bytes, manifest),
  };
  parts.json('members.json', ArchivedMembers);
  parts.end();
  return opened;
}

async function manifestOf(bytes: Uint8Array): Promise<ArchiveManifest> {
  const limits = { ...LIMITS, entryBytes: MANIFEST_BYTES };
  const unpacked = await unpack(bytes, { limits, nesting: 0, wants: (name) => name === MANIFEST });
  if (!unpacked.ok) throw new ArchiveRefused(unpacked.error);
  const { files, others } = unpacked.value;
  const text = files.get(MANIFEST);
  if (text === undefined) throw new ArchiveRefused({ code: 'no-manifest' });
  const manifest = readManifest(Buffer.from(text).toString('utf8'));
  if (manifest === 'changed') throw new ArchiveRefused({ code: 'manifest-changed' });
  if ('newer' in manifest) throw new ArchiveRefused({ code: 'archive-newer', format: manifest.newer });
  const named = new Set(manifest.parts.map(({ name }) => name));
  if (named.size < manifest.parts.length) throw new ArchiveRefused({ code: 'manifest-changed' });
  const added = others.find((name) => !named.has(name));
  if (added !== undefined) throw new ArchiveRefused({ code: 'part-added', part: added });
  const there = new Set(others);
  const missing = manifest.parts.find(({ name }) => !there.has(name));
  if (missing !== undefined) throw new ArchiveRefused({ code: 'part-missing', part: missing.name });
  const unknown = manifest.parts.find(({ name }) => !ABOUT.test(name) && !FOLDER.test(name));
  if (unknown !== undefined) throw new ArchiveRefused({ code: 'part-added', part: unknown.name });
  return manifest;
}

type Part = ArchiveManifest['parts'][number];

/** The parts of a manifest in batches; those of one folder are never in two. */
function batchesOf({ parts }: ArchiveManifest): readonly (readonly Part[])[] {
  const batches: Part[][] = [];
  let size = Number.POSITIVE_INFINITY;
  let last: string | undefined;
  for (const part of parts) {
    const folder = FOLDER.exec(part.name)?.[0];
    if (size > BATCH && (folder === undefined || folder !== last)) {
      batches.push([]);
      size = 0;
    }
    batches.at(-1)?.push(part);
    size += part.size;
    last = folder;
  }
  return batches;
}

async function unpackChecked(bytes: Uint8Array, batch: readonly Part[]): Promise<ReadonlyMap<string, Uint8Array>> {
  const wanted = new Map(batch.map((part) => [part.name, part]));
  const unpacked = await unpack(bytes, { limits: LIMITS, nesting: 0, wants: (name) => wanted.has(name) });
  if (!unpacked.ok) throw new ArchiveRefused(unpacked.error);
  const { files } = unpacked.value;
  for (const { name, size, sha256 } of batch) {
    const file = files.get(name);
    if (file === undefined) throw new ArchiveRefused({ code: 'part-missing', part: name });
    if (file.length !== size || (await sha256Of(Uint8Array.from(file))) !== sha256)
      throw new ArchiveRefused({ code: 'part-changed', part: name });
  }
  return files;
}

function described<Schema extends z.ZodType>(
  manifest: ArchiveManifest,
  parts: PartsIn,
  [under, what, schema]: readonly [under: string, what: string, schema: Schema],
): ReadonlyMap<string, z.output<Schema>> {
  const folders = new Set(manifest.parts.flatMap(({ name }) => FOLDER.exec(name)?.[0] ?? []));
  const own = [...folders].filter((folder) => folder.startsWith(`${under}/`));
  return new Map(own.map((folder) => [folder, parts.json(`${folder}/${what}.json`, schema)]));
}

function auditOf(parts: PartsIn): z.output<typeof ArchivedAudit> {
  const entries: z.output<typeof ArchivedAudit> = [];
  for (let part = 1; parts.has(`audit/${part}.json`); part += 1)
    entries.push(...parts.json(`audit/${part}.json`, ArchivedAudit));
  return entries;
}

async function* foldersOf(bytes: Uint8Array, manifest: ArchiveManifest): ReturnType<OpenedArchive['folders']> {
  for (const batch of batchesOf(manifest)) {
    const heavy = batch.filter(({ name }) => !ABOUT.test(name));
    const files = heavy.length === 0 ? new Map<string, Uint8Array>() : await unpackChecked(bytes, heavy);
    const folders = new Map<string, Map<string, Uint8Array>>();
    for (const { name } of batch) {
      const folder = FOLDER.exec(name)?.[0];
      if (folder === undefined) continue;
      const own = folders.get(folder) ?? new Map<string, Uint8Array>();
      folders.set(folder, own);
      const file = files.get(name);
      if (file !== undefined) own.set(name, file);
    }
    for (const [folder, own] of folders) {
      yield { folder, parts: new PartsIn(own) };
      if (own.size === 0) throw unreadable(folder);
    }
  }
}
