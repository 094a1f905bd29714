import { type Claim, footprintAt } from '../address/claim.ts';
import type { Unit } from '../address/unit.ts';
import type { Finding } from '../model/finding.ts';
import { makeFinding } from './make-finding.ts';

/** A fixture without any start address, or with none for one of its breaks. [CH8] */
export function unpatched(unit: Unit, claims: readonly Claim[], found: Finding[]): void {
  const { fixture } = unit;
  const missing = missingParts(unit);
  if (missing.length === 0) return;
  if (claims.length === 0) found.push(makeFinding({ rule: 'unpatched', part: null }, [fixture.id]));
  else for (const part of missing) found.push(makeFinding({ rule: 'unpatched', part }, [fixture.id]));
}

const NO_PARTS: readonly number[] = Object.freeze([]);

function missingParts({ fixture, mode }: Unit): readonly number[] {
  const { addresses } = fixture;
  const breaks = mode === undefined ? 1 : mode.footprints.length;
  let missing: number[] | undefined;
  for (let part = 0; part < breaks; part++) {
    if ((addresses[part] ?? null) !== null || footprintAt(mode, part) === 0) continue;
    missing ??= [];
    missing.push(part + 1);
  }
  return missing ?? NO_PARTS;
}
