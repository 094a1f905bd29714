import type { FixtureType, Part, TypeChannel, TypeMode } from '../model/fixture-type.ts';

/** SHA-256 of a text's UTF-8 bytes, as lower-case hexadecimal digits. Handed in: the engine owns no hash. */
export type Sha256 = (text: string) => Promise<string>;

/** The name of a revision: equal exactly for types that say the same. */
export function contentHash(type: FixtureType, sha256: Sha256): Promise<string> {
  return sha256(canonicalText(type));
}

/**
 * A type as text: JSON with its keys sorted, and sorted wherever order says nothing: parts, modes, channels, named ranges,
 * firmware versions, breakers. Order is kept where it means something: a copy's starts, a channel's uses and functions.
 */
export function canonicalText(type: FixtureType): string {
  return spell({
    ...type,
    parts: sorted(type.parts, (part: Part) => part),
    modes: sorted(type.modes, canonicalMode),
    physical: { ...type.physical, perBreaker: sorted(type.physical.perBreaker, (row) => row) },
  });
}

const canonicalMode = (mode: TypeMode) => ({
  ...mode,
  channels: sorted(mode.channels, canonicalChannel),
  firmware: sorted(mode.firmware, (version) => version),
});

const canonicalChannel = (channel: TypeChannel) => ({
  ...channel,
  uses: channel.uses.map((use) => ({
    ...use,
    functions: use.functions.map((each) => ({ ...each, ranges: sorted(each.ranges, (range) => range) })),
  })),
});

interface Spelled {
  readonly spelled: string;
}

/** Spelled, then sorted by that: an order that the values alone decide. */
function sorted<T>(items: readonly T[], canonical: (item: T) => unknown): Spelled {
  return {
    spelled: `[${items
      .map((item) => spell(canonical(item)))
      .sort()
      .join(',')}]`,
  };
}

function spell(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(spell).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  if (isSpelled(value)) return value.spelled;
  const entries = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1));
  return `{${entries.map(([key, each]) => `${JSON.stringify(key)}:${spell(each)}`).join(',')}}`;
}

const isSpelled = (value: object): value is Spelled => 'spelled' in value && typeof value.spelled === 'string';
