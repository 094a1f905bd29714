import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { expect, it } from 'vitest';

const root = join(import.meta.dirname, '../..');

// The adapter knows the embedded store's errors by their class: with a second copy of the package a broken unique rule would come
// out as an unknown error.
it('there is one copy of PGlite, and the adapter uses it', () => {
  const { packages } = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8'));
  const copies = Object.keys(packages).filter((path) => path.endsWith('node_modules/@electric-sql/pglite'));
  expect(copies).toEqual(['node_modules/@electric-sql/pglite']);
  const ours = createRequire(import.meta.url).resolve('@electric-sql/pglite');
  const adapter = createRequire(import.meta.url).resolve('pglite-prisma-adapter');
  expect(createRequire(adapter).resolve('@electric-sql/pglite')).toBe(ours);
});
