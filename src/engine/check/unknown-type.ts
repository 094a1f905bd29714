import type { Claim } from '../address/claim.ts';
import type { Unit } from '../address/unit.ts';
import type { Finding } from '../model/finding.ts';
import { makeFinding } from './make-finding.ts';

/** The rig knows no mode of this type, or no type is given: its slots can't be counted. [CH6] */
export function unknownType({ fixture, typeKnown }: Unit, _claims: readonly Claim[], found: Finding[]): void {
  if (!typeKnown) found.push(makeFinding({ rule: 'unknown-type', type: fixture.type }, [fixture.id]));
}
