import type { Finding } from '../model/finding.ts';

/** What a step did to the findings: exactly those that came and those that went. [CH23] */
export interface FindingsDelta {
  readonly added: readonly Finding[];
  readonly removed: readonly Finding[];
}

export interface OpenDelta {
  readonly added: Finding[];
  readonly removed: Finding[];
}

/** The findings that stand, by what they come from: a unit, a universe, a channel, a place. */
export class StandingFindings<Key> {
  readonly #standing = new Map<Key, readonly Finding[]>();

  /** Puts `fresh` in the place of what stood for `key`. A finding that stands already stays the same object. */
  settle(key: Key, fresh: readonly Finding[], delta: OpenDelta): void {
    const old = this.#standing.get(key);
    if (old === undefined) {
      if (fresh.length === 0) return;
      this.#standing.set(key, fresh);
      for (const finding of fresh) delta.added.push(finding);
      return;
    }
    if (fresh.length === 0) {
      this.#standing.delete(key);
      for (const finding of old) delta.removed.push(finding);
    } else this.#standing.set(key, keepSame(old, fresh, delta));
  }
}

function keepSame(old: readonly Finding[], fresh: readonly Finding[], delta: OpenDelta): readonly Finding[] {
  const standing = old.length > FEW ? new Map(old.map((finding) => [finding.key, finding])) : undefined;
  const sameAs = ({ key }: Finding) =>
    standing === undefined ? old.find((finding) => finding.key === key) : standing.get(key);
  const stays = new Set<Finding>();
  const kept = fresh.map((finding) => {
    const same = sameAs(finding);
    if (same === undefined) delta.added.push(finding);
    else stays.add(same);
    return same ?? finding;
  });
  for (const finding of old) if (!stays.has(finding)) delta.removed.push(finding);
  return kept;
}

const FEW = 8;
