import { existsSync, readFileSync, writeFileSync } from 'node:fs';

const fileOf = (name: string): URL => new URL(`../regressions/${name}.json`, import.meta.url);

/** Seeds that once failed, and run first for ever. */
export function keptSeeds(name: string): readonly number[] {
  const file = fileOf(name);
  return existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : [];
}

/** Keeps a seed that has failed. */
export function keepSeed(name: string, seed: number): void {
  const seeds = [...new Set([...keptSeeds(name), seed])].sort((a, b) => a - b);
  writeFileSync(fileOf(name), `${JSON.stringify(seeds)}\n`);
}
