import type { Rename } from './rename.ts';

/**
 * Spells names with the signs the format allows, each name in one way and no two names alike, and keeps what had to be
 * changed. Source: GDTF (DIN SPEC 15800), Annex C, as far as the published schema takes it: no sign above U+007F.
 */
export class SpelledNames {
  private readonly spelled = new Map<string, string>();
  private readonly names = new Map<string, string>();
  private readonly counts = new Map<string, number>();

  readonly spell: Rename = (name, nth) => {
    const key = `${nth} ${name}`;
    const known = this.spelled.get(key);
    if (known !== undefined) return known;
    let candidate = nth === 0 ? clean(name) : `${clean(name)} (${nth + 1})`;
    while (this.names.has(candidate)) candidate = this.numbered(clean(name));
    this.spelled.set(key, candidate);
    this.names.set(candidate, name);
    return candidate;
  };

  private numbered(base: string): string {
    const count = (this.counts.get(base) ?? 1) + 1;
    this.counts.set(base, count);
    return `${base} #${count}`;
  }

  /** Every name that is spelled otherwise than it is. */
  changed(): [spelled: string, name: string][] {
    return [...this.names].filter(([spelled, name]) => spelled !== name);
  }
}

// A sign that carries marks is written without them before it is given up.
const clean = (name: string) =>
  name
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(/[^ "#%'()*+\-/0-9:;<=>@A-Z_`a-z]/gu, '_') || 'Unnamed';
