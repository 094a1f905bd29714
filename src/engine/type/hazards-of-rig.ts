import { getRow, rowsOf } from '#base/table.ts';
import { modeOf } from '../model/find-mode.ts';
import { HAZARD_KINDS, type HazardKind, type Hazards, NO_HAZARDS, type SignedHazard } from '../model/fixture-type.ts';
import { foldName } from '../model/ids.ts';
import type { Rig, Signature } from '../model/rig.ts';
import { needsSignature } from './needs-signature.ts';

/** One hazard of a rig: how many units have it, and of which types. */
export interface RigHazard {
  readonly hazard: HazardKind | 'laser';
  /** That hazard alone, as the worst of its types has it. */
  readonly hazards: Hazards;
  readonly units: number;
  /** By name. */
  readonly types: readonly string[];
  /** Types with which somebody has to answer for it; none for a hazard that nobody has to. */
  readonly toSign: readonly string[];
  /** Who does, if anybody. */
  readonly signature: Signature | undefined;
  /** Of `toSign`, the types that came after, or with which nobody does. */
  readonly open: readonly string[];
}

interface Gathered {
  hazards: Hazards;
  units: number;
  readonly types: Map<string, string>;
  readonly toSign: Map<string, string>;
}

/** What the copied types of a rig are known to do harm with, and who answers for it; lasers first. [HZ1] */
export function hazardsOfRig(rig: Rig): readonly RigHazard[] {
  const found = new Map<RigHazard['hazard'], Gathered>();
  for (const fixture of rowsOf(rig.fixtures)) {
    const mode = modeOf(rig, fixture);
    if (!mode?.pin) continue;
    const { hazards } = mode.pin.type;
    const signed = needsSignature(hazards);
    for (const hazard of kindsOf(hazards)) {
      const entry = found.get(hazard) ?? { hazards: NO_HAZARDS, units: 0, types: new Map(), toSign: new Map() };
      found.set(hazard, entry);
      entry.hazards = withHazard(entry.hazards, hazard, hazards);
      entry.units += 1;
      entry.types.set(foldName(mode.type), mode.type);
      if (signed.some((each) => each === hazard)) entry.toSign.set(foldName(mode.type), mode.type);
    }
  }
  return ORDER.flatMap((hazard) => {
    const entry = found.get(hazard);
    if (entry === undefined) return [];
    const toSign = [...entry.toSign.values()].sort();
    const signature = toSign.length === 0 ? undefined : getRow(rig.signatures, hazard as SignedHazard);
    const covered = new Set(signature?.types.map(foldName));
    const open = toSign.filter((type) => !covered.has(foldName(type)));
    return [
      {
        hazard,
        hazards: entry.hazards,
        units: entry.units,
        types: [...entry.types.values()].sort(),
        toSign,
        signature,
        open,
      },
    ];
  });
}

const ORDER: readonly RigHazard['hazard'][] = ['laser', ...HAZARD_KINDS];

const kindsOf = (hazards: Hazards): readonly RigHazard['hazard'][] =>
  ORDER.filter((hazard) => (hazard === 'laser' ? hazards.laser !== null : hazards[hazard]));

/** Classes from the least to the most dangerous; one that nobody stated is taken for the worst. */
const CLASSES = ['1', '1C', '1M', '2', '2M', '3R', '3B', '4', 'unknown'];

function withHazard(known: Hazards, hazard: RigHazard['hazard'], { laser }: Hazards): Hazards {
  if (hazard !== 'laser') return { ...known, [hazard]: true };
  const worse = CLASSES.indexOf(laser ?? '') > CLASSES.indexOf(known.laser ?? '');
  return worse ? { ...known, laser } : known;
}
