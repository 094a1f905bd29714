/** What is found of the upkeep of units. */
export type UpkeepTrouble =
  /** A unit with a fault that nobody has mended yet: what is wrong, who saw it and when, as they wrote it. */
  { readonly rule: 'fault-open'; readonly what: string; readonly seenBy: string; readonly seenOn: string };

export const UPKEEP_RULES = ['fault-open'] as const satisfies readonly UpkeepTrouble['rule'][];
