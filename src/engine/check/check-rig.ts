import type { Finding } from '../model/finding.ts';
import type { Rig } from '../model/rig.ts';
import { createChecker } from './checker.ts';
import { type NewestRevisions, NO_LIBRARY } from './type-findings.ts';

/**
 * Everything the rules have to say of a rig, in the order of `compareFindings`. Total: any rig at all is answered. The
 * order of rows does not matter.
 */
export function checkRig(rig: Rig, library: NewestRevisions = NO_LIBRARY): readonly Finding[] {
  return createChecker(rig, library).findings();
}
