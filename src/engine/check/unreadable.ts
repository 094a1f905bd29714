import type { Claim } from '../address/claim.ts';
import type { Unit } from '../address/unit.ts';
import type { Finding } from '../model/finding.ts';
import { makeFinding } from './make-finding.ts';

/** A cell whose content its field cannot mean. It stays as it was typed, and counts as empty, until it is corrected. [CH9] */
export function unreadable({ fixture }: Unit, _claims: readonly Claim[], found: Finding[]): void {
  for (const cell of fixture.unreadable) found.push(makeFinding({ rule: 'unreadable', cell }, [fixture.id]));
}
