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

const NONE: readonly Finding[] = Object.freeze([]);

/** The findings that stand, by what they come from: a unit, a universe, a channel, a place. */
export class StandingFindings<Key> {
  readonly #standing = new Map<Key, readonly Finding[]>();

  of(key: Key): readonly Finding[] {
    return this.#standing.get(key) ?? NONE;
  }

  /** Puts `fresh` in the place of what stood for `key`. A finding that stands already stays the same object. */
  settle(key: Key, fresh: readonly Finding[], delta: OpenDelta): void {
    const old = this.#standing.get(key);
    if (old === undefined) {
      if (fresh.length === 0) return;
      this.#standing.set(key, fresh);
      for (const finding of fresh) delta.added.push(finding);
      return;
    }
    const kept = keepSame(old, fresh, delta);
    if (kept.length === 0) this.#standing.delete(key);
    else this.#standing.set(key, kept);
  }
}

function keepSame(old: readonly Finding[], fresh: readonly Finding[], delta: OpenDelta): readonly Finding[] {
  const leaving = new Map(old.map((finding) => [finding.key, finding]));
  const kept = fresh.map((finding) => {
    const same = leaving.get(finding.key);
    if (same === undefined) delta.added.push(finding);
    else leaving.delete(finding.key);
    return same ?? finding;
  });
  for (const finding of leaving.values()) delta.removed.push(finding);
  return kept;
}
