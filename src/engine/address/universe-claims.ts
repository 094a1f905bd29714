import type { Claim } from './claim.ts';
import type { Unit } from './unit.ts';

/**
 * Everything that is claimed in one universe, packed: `spans[i]` holds first slot, last slot (both 0-based) and break of
 * what `units[i]` claims, so that spans compare as numbers by first slot. Changed in place by the index that owns it. Kept
 * in order while there are few; a crowd is put in order when a question is asked: see `inOrder`.
 */
export interface UniverseClaims {
  readonly universe: number;
  spans: number[];
  units: Unit[];
  ordered: boolean;
}

const FEW = 64;

export const firstOf = (span: number) => span >>> 12;
export const lastOf = (span: number) => (span >>> 3) & 511;
/** The break, 1-based. */
export const partOf = (span: number) => span & 7;

export function noClaims(universe: number): UniverseClaims {
  return { universe, spans: [], units: [], ordered: true };
}

const spanOf = (claim: Claim) => ((claim.first - 1) << 12) | ((claim.last - 1) << 3) | claim.part;

export function addClaim(claims: UniverseClaims, unit: Unit, claim: Claim): void {
  const { spans, units } = claims;
  const span = spanOf(claim);
  if (spans.length >= FEW || !claims.ordered) {
    spans.push(span);
    units.push(unit);
    claims.ordered = false;
    return;
  }
  let at = spans.length;
  spans.push(span);
  units.push(unit);
  for (; at > 0 && (spans[at - 1] as number) > span; at--) {
    spans[at] = spans[at - 1] as number;
    units[at] = units[at - 1] as Unit;
  }
  spans[at] = span;
  units[at] = unit;
}

export function dropClaim({ universe, spans, units }: UniverseClaims, unit: Unit, claim: Claim): void {
  const span = spanOf(claim);
  let at = spans.indexOf(span);
  while (at >= 0 && units[at] !== unit) at = spans.indexOf(span, at + 1);
  if (at < 0) throw new Error(`universe ${universe} holds no claim of ${unit.fixture.id}`);
  const last = spans.length - 1;
  for (; at < last; at++) {
    spans[at] = spans[at + 1] as number;
    units[at] = units[at + 1] as Unit;
  }
  spans.pop();
  units.pop();
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

/** The same claims, by first slot. */
export function inOrder(claims: UniverseClaims): UniverseClaims {
  if (claims.ordered) return claims;
  const { spans, units } = claims;
  const order = Uint32Array.from(spans.keys()).sort((a, b) => (spans[a] as number) - (spans[b] as number));
  claims.spans = Array.from(order, (at) => spans[at] as number);
  claims.units = Array.from(order, (at) => units[at] as Unit);
  claims.ordered = true;
  return claims;
}
