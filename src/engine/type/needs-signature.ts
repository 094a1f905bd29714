import type { Hazards, SignedHazard } from '../model/fixture-type.ts';
import { SIGNED_HAZARDS } from '../model/fixture-type.ts';

/**
 * The hazards of a type that a named person has to answer for. A laser from class 3R on, or of unknown class, is one.
 * Source: common practice, after the classes of IEC 60825-1; local rules may ask for more.
 */
export function needsSignature(hazards: Hazards): readonly SignedHazard[] {
  return SIGNED_HAZARDS.filter((hazard) =>
    hazard === 'laser' ? hazards.laser !== null && SIGNED_CLASSES.has(hazards.laser) : hazards[hazard],
  );
}

const SIGNED_CLASSES: ReadonlySet<string> = new Set(['3R', '3B', '4', 'unknown']);
