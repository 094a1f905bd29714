import type { CardField, CardKind } from './card.ts';
import { NETWORK_RULES, type NetworkTrouble } from './network-trouble.ts';
import { RUN_RULES, type RunTrouble } from './run-trouble.ts';
import { SUPPLY_RULES, type SupplyTrouble } from './supply-trouble.ts';
import { UPKEEP_RULES, type UpkeepTrouble } from './upkeep-trouble.ts';

/** What a rule found in what the crew says of network, lines, feeds, limits and upkeep. Each union member is one rule. */
export type PlantTrouble =
  /** A cell of a card that cannot be what stands in it. */
  | {
      readonly rule: 'card-unreadable';
      readonly card: CardKind;
      /** The name of the card, or what it is known by. */
      readonly of: string;
      readonly field: CardField;
      readonly value: string | number;
    }
  | NetworkTrouble
  | RunTrouble
  | SupplyTrouble
  | UpkeepTrouble;

export type PlantRule = PlantTrouble['rule'];

export const PLANT_RULES = [
  'card-unreadable',
  ...NETWORK_RULES,
  ...RUN_RULES,
  ...SUPPLY_RULES,
  ...UPKEEP_RULES,
] as const satisfies readonly PlantRule[];
