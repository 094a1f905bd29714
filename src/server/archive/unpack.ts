import { crc32 } from 'node:zlib';
import { type Entry, fromBufferPromise, getFileNameLowLevel, validateFileName, type ZipFile } from 'yauzl';
import { ok, type Result, refuse } from '#base/result.ts';
import type { ArchiveRefusal } from '#engine/type/file-refusal.ts';
import type { Unpack, Unpacked, Unpacking } from '#exchange/archive/archive.ts';
import { compressionMethod } from '#exchange/archive/compression-method.ts';

/**
 * Unpacks the wanted entries of a zip, reading it as a stream: an entry that grows beyond a cap, or beyond what its header
 * says, is cut off there. Takes methods 0 and 8. Names that leave the archive refuse all of it.
 */
export const unpack: Unpack = async (bytes, unpacking) => {
  const early = refusedUnopened(bytes, unpacking);
  if (early !== undefined) return refuse(early);
  const buffer = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const opened = await attempt(() => fromBufferPromise(buffer, { lazyEntries: true, decodeStrings: false }));
  if (!opened.ok) return refuse(whyUnopened(bytes));
  const listed = await listEntries(opened.value, unpacking);
  return listed.ok ? unpackListed(opened.value, listed.value, unpacking) : listed;
};

interface Listed {
  readonly name: string;
  readonly entry: Entry;
}

function refusedUnopened(bytes: Uint8Array, { limits, nesting }: Unpacking): ArchiveRefusal | undefined {
  if (nesting > limits.nesting) return { code: 'archive-nested', limit: limits.nesting };
  if (bytes.length === 0) return { code: 'archive-empty' };
  if (bytes.length <= limits.bytes) return undefined;
  return { code: 'archive-too-large', bytes: bytes.length, limit: limits.bytes };
}

/** An archive begins with an entry and ends with its list: with the first and without the second it was cut off. */
function whyUnopened(bytes: Uint8Array): ArchiveRefusal {
  const begins = bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 3 && bytes[3] === 4;
  return { code: begins ? 'archive-truncated' : 'not-an-archive' };
}

async function listEntries(
  zip: ZipFile,
  { limits, wants }: Unpacking,
): Promise<Result<readonly Listed[], ArchiveRefusal>> {
  if (zip.entryCount === 0) return refuse({ code: 'archive-empty' });
  if (zip.entryCount > limits.entries) {
    return refuse({ code: 'too-many-entries', entries: zip.entryCount, limit: limits.entries });
  }
  const listed = new Map<string, Listed>();
  const walked = await attempt(async () => {
    for await (const entry of zip.eachEntry()) {
      const name = nameOf(entry);
      if (validateFileName(name) !== null) return { code: 'path-outside' as const, entry: name };
      // Twice the same picture is nobody's trouble; of what is wanted, nobody could say which one counts.
      if (listed.has(name) && wants(name)) return { code: 'named-twice' as const, entry: name };
      listed.set(name, { name, entry });
    }
    return undefined;
  });
  if (!walked.ok) return refuse({ code: 'archive-damaged', entry: null });
  return walked.value === undefined ? ok([...listed.values()]) : refuse(walked.value);
}

// Some writers spell folders with a backslash; a path that leaves the archive is none the better for it.
const nameOf = (entry: Entry) =>
  getFileNameLowLevel(entry.generalPurposeBitFlag, entry.fileNameRaw, entry.extraFields, false);

async function unpackListed(
  zip: ZipFile,
  listed: readonly Listed[],
  unpacking: Unpacking,
): Promise<Result<Unpacked, ArchiveRefusal>> {
  const files = new Map<string, Uint8Array>();
  const others: string[] = [];
  let total = 0;
  for (const each of listed) {
    if (each.name.endsWith('/')) continue;
    if (!unpacking.wants(each.name)) {
      others.push(each.name);
      continue;
    }
    const { entryBytes, totalBytes } = unpacking.limits;
    const file = await unpackEntry(zip, each, Math.min(entryBytes, totalBytes - total));
    if (!file.ok) {
      const overTotal = file.error.code === 'entry-too-large' && totalBytes - total < entryBytes;
      return refuse(overTotal ? { code: 'total-too-large', limit: totalBytes } : file.error);
    }
    total += file.value.length;
    files.set(each.name, file.value);
  }
  return ok({ files, others });
}

async function unpackEntry(
  zip: ZipFile,
  { name, entry }: Listed,
  cap: number,
): Promise<Result<Buffer, ArchiveRefusal>> {
  if (entry.isEncrypted()) return refuse({ code: 'encrypted', entry: name });
  const { compressionMethod: method, uncompressedSize: said } = entry;
  if (method !== 0 && method !== 8) {
    return refuse({ code: 'compression-method', entry: name, method: compressionMethod(method) });
  }
  if (said > cap) return refuse({ code: 'entry-too-large', entry: name, limit: cap });
  const chunks: Buffer[] = [];
  let length = 0;
  const read = await attempt(async () => {
    for await (const chunk of await zip.openReadStreamPromise(entry)) {
      chunks.push(chunk);
      length += chunk.length;
      if (length > said || length > cap) return;
    }
  });
  if (length > said) return refuse({ code: 'size-untrue', entry: name, said });
  if (!read.ok) return refuse(sizeFault(read.error, name, said) ?? { code: 'archive-damaged', entry: name });
  const file = Buffer.concat(chunks);
  return crc32(file) === entry.crc32 ? ok(file) : refuse({ code: 'archive-damaged', entry: name });
}

// The library watches the size by itself, and says so in words only.
function sizeFault(error: Error, entry: string, said: number): ArchiveRefusal | undefined {
  return /(many|enough) bytes in the stream/.test(error.message) ? { code: 'size-untrue', entry, said } : undefined;
}

/** What `work` gives, or the error by which the library reports a broken archive; it has no other way to say so. */
async function attempt<T>(work: () => Promise<T>): Promise<Result<T, Error>> {
  try {
    return ok(await work());
  } catch (error) {
    if (error instanceof Error) return refuse(error);
    throw error;
  }
}
