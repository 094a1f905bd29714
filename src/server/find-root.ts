import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';

/** The program's own folder: the nearest one above `from` with a package.json. The same for the sources and for the bundle. */
export function findRoot(from: string): string {
  if (existsSync(join(from, 'package.json'))) return from;
  const above = dirname(from);
  if (above === from) throw new Error('no package.json above the program');
  return findRoot(above);
}
