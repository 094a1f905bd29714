import { zipSync } from 'fflate';

/** A zip of files by name: deflated, in the order of their names, dated 1980, so that equal files give equal bytes. */
export function writeZip(files: Readonly<Record<string, Uint8Array>>): Uint8Array {
  const names = Object.keys(files).sort();
  const entries = names.map((name) => [name, files[name] ?? new Uint8Array()] as const);
  return zipSync(Object.fromEntries(entries), { level: 6, mtime: FIRST_DAY });
}

// The first day the format can write. Read as local time, which is how the writer spells it.
const FIRST_DAY = new Date(1980, 0, 1);
