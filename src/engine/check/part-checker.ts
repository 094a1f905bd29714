import type { RigIndex, UnitChange } from '../address/occupancy-index.ts';
import type { CardKind } from '../model/card.ts';
import type { Plant } from '../model/plant.ts';
import type { Rig } from '../model/rig.ts';
import type { OpenDelta } from './standing-findings.ts';

/** A step from one rig to the next, as those see it who check what the crew says of network, lines, feeds and limits. */
export interface CheckStep {
  readonly before: Rig;
  readonly next: Rig;
  /** Of the next rig. */
  readonly plant: Plant;
  /** The kinds of which a card changed. */
  readonly replanted: ReadonlySet<CardKind>;
  readonly changes: readonly UnitChange[];
  /** Of the next rig. */
  readonly index: RigIndex;
}

/** Checks one part of a rig. Whatever the way it came to a rig, what it has settled is what that rig gives. [CH23] */
export interface PartChecker {
  update(step: CheckStep, delta: OpenDelta): void;
}
