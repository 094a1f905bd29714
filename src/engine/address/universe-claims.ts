import type { Claim } from './claim.ts';
import type { Unit } from './unit.ts';

/**
 * Everything that is claimed in one universe, packed: `spans[i]` holds the first and last slot (0-based, 9 bits each) and
 * the break of what `units[i]` claims. In no order; changed in place by the index that owns it.
 */
export interface UniverseClaims {
  readonly universe: number;
  readonly spans: number[];
  readonly units: Unit[];
}

export const firstOf = (span: number) => span & 511;
export const lastOf = (span: number) => (span >>> 9) & 511;
/** The break, 1-based. */
export const partOf = (span: number) => span >>> 18;

export function addClaim(claims: UniverseClaims, unit: Unit, claim: Claim): void {
  claims.spans.push((claim.first - 1) | ((claim.last - 1) << 9) | (claim.part << 18));
  claims.units.push(unit);
}

/** Takes out one claim of `unit`; which one does not matter to a caller that takes out all of them. */
export function dropClaim(claims: UniverseClaims, unit: Unit): void {
  const at = claims.units.lastIndexOf(unit);
  if (at < 0) throw new Error(`universe ${claims.universe} holds no claim of ${unit.fixture.id}`);
  const lastSpan = claims.spans.pop() as number;
  const lastUnit = claims.units.pop() as Unit;
  if (at === claims.units.length) return;
  claims.spans[at] = lastSpan;
  claims.units[at] = lastUnit;
}

const WORDS = 16;
const bits = new Int32Array(WORDS);

/** Whether any slot is claimed twice: one bit per slot, and the first bit found set already answers. */
export function hasClash(claims: UniverseClaims): boolean {
  const { spans } = claims;
  if (spans.length < 2) return false;
  bits.fill(0);
  for (let i = 0; i < spans.length; i++) {
    const span = spans[i] as number;
    const first = span & 511;
    const last = (span >>> 9) & 511;
    const end = last >>> 5;
    let word = first >>> 5;
    let mask = -1 << (first & 31);
    while (word < end) {
      if (((bits[word] as number) & mask) !== 0) return true;
      bits[word] = (bits[word] as number) | mask;
      mask = -1;
      word += 1;
    }
    mask &= -1 >>> (31 - (last & 31));
    if (((bits[end] as number) & mask) !== 0) return true;
    bits[end] = (bits[end] as number) | mask;
  }
  return false;
}
