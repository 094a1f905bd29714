/**
 * What a unit is, as its manual tells it: plain, immutable data. One value is one revision; `contentHash` names it. The
 * shape follows GDTF (DIN SPEC 15800): parts are its geometries, copies its geometry references.
 */
export interface FixtureType {
  readonly maker: string;
  readonly model: string;
  readonly shortName: string;
  readonly description: string;
  /** The GDTF identity of the type over all its revisions, upper case; empty when it has none. */
  readonly guid: string;
  /** Every part, a parent before what is within it, siblings in their order. Names are unique in a type. */
  readonly parts: readonly Part[];
  readonly modes: readonly TypeMode[];
  readonly physical: Physical;
  readonly settings: Settings;
  readonly hazards: Hazards;
}

export const PART_KINDS = ['part', 'axis', 'beam', 'laser'] as const;
export type PartKind = (typeof PART_KINDS)[number];

/** A part of the unit that channels act on. */
export interface Part {
  readonly name: string;
  readonly kind: PartKind;
  /** The name of the part it sits in; null for one at the top, which modes and copies start from. */
  readonly within: string | null;
  /** Set when this part is one more cell of the kind of a part at the top. */
  readonly copy: Copy | null;
}

export interface Copy {
  readonly of: string;
  /** Where the cell's slots start in each break, in order: the last one counts for channels of break `of-copy`. */
  readonly starts: readonly { readonly break: number; readonly slot: number }[];
}

export interface TypeMode {
  readonly name: string;
  readonly description: string;
  /** The part at the top that this mode starts from; channels of parts that cannot be reached from it do not count. */
  readonly root: string;
  readonly channels: readonly TypeChannel[];
  /** Firmware versions this mode is in, as the manual writes them; none: all. */
  readonly firmware: readonly string[];
}

/** Bytes of a channel's value. */
export type Resolution = 1 | 2 | 3 | 4;

export interface TypeChannel {
  readonly part: string;
  /** `of-copy`: the break that the cell names last (GDTF `Overwrite`). */
  readonly break: number | 'of-copy';
  /** Slots from the start of the break or cell on, 1-based, coarse first; they need not be adjacent. None: virtual. */
  readonly offsets: readonly number[];
  /** As many bytes as offsets; of a virtual channel, that of its values. All values below are of this resolution. */
  readonly resolution: Resolution;
  readonly highlight: number | null;
  /** The function it stands in at first, when that is not the first one. */
  readonly initial: FunctionName | null;
  /** What the channel does; nearly always one, and the first one names the channel. */
  readonly uses: readonly ChannelUse[];
}

export interface ChannelUse {
  /** A GDTF attribute name, or any text a file or a person calls it. */
  readonly attribute: string;
  readonly snap: 'No' | 'Yes' | 'On' | 'Off';
  readonly master: 'None' | 'Grand' | 'Group';
  readonly functions: readonly ChannelFunction[];
}

/** What a stretch of values does: from `from` to the next function of the same condition, or the end. */
export interface ChannelFunction {
  readonly name: string;
  readonly attribute: string;
  readonly from: number;
  readonly default: number;
  /** The physical values at both ends, in the attribute's unit; null when not stated. */
  readonly physical: PhysicalRange | null;
  readonly when: Condition | null;
  readonly ranges: readonly NamedRange[];
}

/** From `from` to the next range, or the end of its function. A range without a name only ends the one before. */
export interface NamedRange {
  readonly name: string;
  readonly from: number;
  readonly physical: PhysicalRange | null;
}

export interface PhysicalRange {
  readonly from: number;
  readonly to: number;
}

/** A function of a channel: the attribute of the use it is in, and its name there. */
export interface FunctionName {
  readonly attribute: string;
  readonly name: string;
}

/** The function works only while another channel of its mode, or one function of it, stands between two values. */
export interface Condition {
  readonly part: string;
  /** The first attribute of that channel. */
  readonly attribute: string;
  readonly within: FunctionName | null;
  /** Values of that channel, both counted in. */
  readonly from: number;
  readonly to: number;
}

/** As the manual states it; null or empty where it does not. Planning aids: see the cautions. */
export interface Physical {
  /** Kilograms, above 0. */
  readonly weight: number | null;
  /** Watts, above 0. */
  readonly power: number | null;
  readonly powerFactor: number | null;
  readonly voltage: { readonly low: number; readonly high: number } | null;
  readonly connector: string;
  /** How many units the manual allows on one breaker, in its own words. */
  readonly perBreaker: readonly { readonly breaker: string; readonly most: string }[];
}

export interface Settings {
  /** Address switches hold the address (`A`), or the address less 1 (`B`); null: it has none, or nobody said. */
  readonly switches: 'A' | 'B' | null;
  /** What it does when the data stops. */
  readonly onLoss: string;
}

/** Classes of IEC 60825-1; `unknown` for a laser whose class nobody stated. */
export const LASER_CLASSES = ['1', '1C', '1M', '2', '2M', '3R', '3B', '4', 'unknown'] as const;
type LaserClass = (typeof LASER_CLASSES)[number];

export const HAZARD_KINDS = ['strobe', 'ultraviolet', 'movingParts', 'fog', 'heat'] as const;
export type HazardKind = (typeof HAZARD_KINDS)[number];

export type Hazards = Readonly<Record<HazardKind, boolean>> & { readonly laser: LaserClass | null };

/** Hazards that a named person has to answer for before a show (common practice): the others are cautions only. */
export const SIGNED_HAZARDS = ['laser', 'strobe', 'ultraviolet', 'fog'] as const;
export type SignedHazard = (typeof SIGNED_HAZARDS)[number];

export const NOTHING_STATED: Physical = Object.freeze({
  weight: null,
  power: null,
  powerFactor: null,
  voltage: null,
  connector: '',
  perBreaker: Object.freeze([]),
});

export const NO_SETTINGS: Settings = Object.freeze({ switches: null, onLoss: '' });

export const NO_HAZARDS: Hazards = Object.freeze({
  laser: null,
  strobe: false,
  ultraviolet: false,
  movingParts: false,
  fog: false,
  heat: false,
});
