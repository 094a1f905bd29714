import { promisify } from 'node:util';
import { crc32, deflateRaw } from 'node:zlib';
import { Zip, type ZipInputFile } from 'fflate';

/** A file of an archive, whole. */
export interface PackedEntry {
  readonly name: string;
  readonly bytes: Uint8Array;
}

const deflate = promisify(deflateRaw);

/**
 * Writes a zip as its entries come, one after the other, dated 1980 so that equal entries give equal bytes. What takes long is done beside
 * the thread that asks.
 */
export async function* pack(entries: AsyncIterable<PackedEntry>): AsyncGenerator<Uint8Array, void> {
  let ready: Uint8Array[] = [];
  const zip = new Zip((error, chunk) => {
    if (error) throw error;
    ready.push(chunk);
  });
  for await (const { name, bytes } of entries) {
    const deflated = await deflate(bytes);
    const file: ZipInputFile = {
      filename: name,
      size: bytes.length,
      crc: crc32(bytes),
      compression: DEFLATED,
      mtime: FIRST_DAY,
    };
    zip.add(file);
    file.ondata?.(null, Uint8Array.from(deflated), true);
    yield* ready;
    ready = [];
  }
  zip.end();
  yield* ready;
}

/** Source: the format's APPNOTE, 4.4.5. */
const DEFLATED = 8;
// The first day the format can write. Read as local time, which is how the writer spells it.
const FIRST_DAY = new Date(1980, 0, 1);
