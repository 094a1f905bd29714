import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, resolve } from 'node:path';
import { compile } from 'tailwindcss';

const root = new URL('../../..', import.meta.url).pathname;
const require = createRequire(import.meta.url);

/** The style sheet of the program, made as its build makes it: from app/globals.css and every class name in the sources. */
export async function buildStyleSheet(): Promise<string> {
  const path = join(root, 'app/globals.css');
  const compiler = await compile(readFileSync(path, 'utf8'), {
    base: dirname(path),
    loadStylesheet: async (id, base) => {
      const file = id.startsWith('.')
        ? resolve(base, id)
        : require.resolve(id === 'tailwindcss' ? 'tailwindcss/index.css' : id);
      return { path: file, base: dirname(file), content: withFontPaths(file, readFileSync(file, 'utf8')) };
    },
  });
  return compiler.build(wordsIn(join(root, 'src/ui')));
}

/** Fonts are served from where their packages keep them. */
function withFontPaths(file: string, css: string): string {
  const from = file.lastIndexOf('/node_modules/');
  return from < 0 ? css : css.replaceAll('url(./', `url(${dirname(file.slice(from))}/`);
}

/** Everything in the sources that may be a class name; what is none is passed over by the compiler. */
function wordsIn(folder: string): string[] {
  const words = new Set<string>();
  for (const entry of readdirSync(folder, { withFileTypes: true, recursive: true })) {
    if (!/\.tsx?$/.test(entry.name)) continue;
    const text = readFileSync(join(entry.parentPath, entry.name), 'utf8');
    for (const word of text.split(/[\s"'`]+/)) if (word !== '') words.add(word);
  }
  return [...words];
}
