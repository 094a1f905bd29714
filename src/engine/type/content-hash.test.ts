import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { type Rng, seededRng } from '#base/rng.ts';
import { randomType } from '#tests/support/random-type.ts';
import type { FixtureType } from '../model/fixture-type.ts';
import { canonicalText, contentHash } from './content-hash.ts';

const sha256 = async (text: string) => createHash('sha256').update(text).digest('hex');

describe('contentHash', () => {
  it('[FT1] is the same in whatever order parts, modes, channels, ranges and lists come', () => {
    for (let seed = 1; seed <= 200; seed++) {
      const rng = seededRng(seed);
      const type = randomType(rng);
      expect(canonicalText(reordered(rng, type)), `seed ${seed}`).toBe(canonicalText(type));
    }
  });

  it('[FT1] differs as soon as anything a type says differs', () => {
    for (let seed = 1; seed <= 15; seed++) {
      const type = randomType(seededRng(seed));
      const text = canonicalText(type);
      for (const path of leavesOf(type)) expect(canonicalText(changedAt(type, path)), path.join('.')).not.toBe(text);
    }
  });

  it('[FT1] is the SHA-256 of the canonical text', async () => {
    const type = randomType(seededRng(1));
    expect(await contentHash(type, sha256)).toBe(await sha256(canonicalText(type)));
    expect(await contentHash(type, sha256)).toMatch(/^[0-9a-f]{64}$/);
  });
});

function reordered(rng: Rng, type: FixtureType): FixtureType {
  const mixed = <T>(items: readonly T[]) => {
    const left = [...items];
    return items.map(() => left.splice(rng.int(left.length), 1)[0] as T);
  };
  return {
    ...type,
    parts: mixed(type.parts),
    physical: { ...type.physical, perBreaker: mixed(type.physical.perBreaker) },
    modes: mixed(type.modes).map((mode) => ({
      ...mode,
      firmware: mixed(mode.firmware),
      channels: mixed(mode.channels).map((channel) => ({
        ...channel,
        uses: channel.uses.map((use) => ({
          ...use,
          functions: use.functions.map((each) => ({ ...each, ranges: mixed(each.ranges) })),
        })),
      })),
    })),
  };
}

type Path = readonly (string | number)[];

function leavesOf(value: unknown, path: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return [path];
  return Object.entries(value).flatMap(([key, each]) => leavesOf(each, [...path, key]));
}

/** The type with one leaf changed, of whatever kind it is. */
function changedAt<T>(value: T, [key, ...rest]: Path): T {
  if (key === undefined) return `${String(value)} changed` as T;
  if (Array.isArray(value)) return value.map((each, at) => (at === Number(key) ? changedAt(each, rest) : each)) as T;
  return { ...value, [key]: changedAt((value as Record<string | number, unknown>)[key], rest) };
}
