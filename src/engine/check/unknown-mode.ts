import type { Claim } from '../address/claim.ts';
import type { Unit } from '../address/unit.ts';
import type { Finding } from '../model/finding.ts';
import { makeFinding } from './make-finding.ts';

/** The rig knows the type but not this mode of it, or no mode is given: its slots can't be counted. [CH7] */
export function unknownMode({ fixture, mode, typeKnown }: Unit, _claims: readonly Claim[], found: Finding[]): void {
  if (!typeKnown || mode !== undefined) return;
  found.push(makeFinding({ rule: 'unknown-mode', type: fixture.type, mode: fixture.mode }, [fixture.id]));
}
