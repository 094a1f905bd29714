import type { Claim } from './claim.ts';
import type { Unit } from './unit.ts';

/**
 * Everything that is claimed in one universe, packed: `spans[i]` holds first slot, last slot (both 0-based) and break of
 * what `units[i]` claims, so that spans compare as numbers by first slot. Changed in place by the index that owns it, and
 * put in order when a question is asked: see `inOrder`.
 */
export interface UniverseClaims {
  readonly universe: number;
  spans: number[];
  units: Unit[];
  ordered: boolean;
}

export const firstOf = (span: number) => span >>> 12;
export const lastOf = (span: number) => (span >>> 3) & 511;
/** The break, 1-based. */
export const partOf = (span: number) => span & 7;

export function noClaims(universe: number): UniverseClaims {
  return { universe, spans: [], units: [], ordered: true };
}

export function addClaim(claims: UniverseClaims, unit: Unit, claim: Claim): void {
  const { spans } = claims;
  const span = ((claim.first - 1) << 12) | ((claim.last - 1) << 3) | claim.part;
  if (spans.length > 0 && span < (spans[spans.length - 1] as number)) claims.ordered = false;
  spans.push(span);
  claims.units.push(unit);
}

/** Takes out one claim of `unit`; which one does not matter to a caller that takes out all of them. */
export function dropClaim({ universe, spans, units }: UniverseClaims, unit: Unit): void {
  const at = units.lastIndexOf(unit);
  if (at < 0) throw new Error(`universe ${universe} holds no claim of ${unit.fixture.id}`);
  units.splice(at, 1);
  spans.splice(at, 1);
}

/** Whether any slot is claimed twice: in the order of first slots, one starts before the one before it has ended. */
export function hasClash(claims: UniverseClaims): boolean {
  const { spans } = inOrder(claims);
  let reached = -1;
  for (let i = 0; i < spans.length; i++) {
    const span = spans[i] as number;
    if (span >>> 12 <= reached) return true;
    reached = (span >>> 3) & 511;
  }
  return false;
}

const FEW = 64;

/** The same claims, by first slot. After one edit all but one are in order already. */
export function inOrder(claims: UniverseClaims): UniverseClaims {
  if (claims.ordered) return claims;
  if (claims.spans.length <= FEW) sortFew(claims);
  else sortMany(claims);
  claims.ordered = true;
  return claims;
}

function sortFew({ spans, units }: UniverseClaims): void {
  for (let i = 1; i < spans.length; i++) {
    const span = spans[i] as number;
    const unit = units[i] as Unit;
    let at = i;
    for (; at > 0 && (spans[at - 1] as number) > span; at--) {
      spans[at] = spans[at - 1] as number;
      units[at] = units[at - 1] as Unit;
    }
    spans[at] = span;
    units[at] = unit;
  }
}

function sortMany(claims: UniverseClaims): void {
  const { spans, units } = claims;
  const order = Uint32Array.from(spans.keys()).sort((a, b) => (spans[a] as number) - (spans[b] as number));
  claims.spans = Array.from(order, (at) => spans[at] as number);
  claims.units = Array.from(order, (at) => units[at] as Unit);
}
