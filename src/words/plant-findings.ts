import type { Finding } from '#engine/model/finding.ts';
import { PLANT_RULES, type PlantRule, type PlantTrouble } from '#engine/model/plant-trouble.ts';
import { CARD_WORDS, cardCellWords } from './cards.ts';
import { isNetworkFinding, NETWORK_RULE_TITLES, networkSentence } from './network-findings.ts';
import { isRunFinding, RUN_RULE_TITLES, runSentence } from './run-findings.ts';
import { isSupplyFinding, SUPPLY_RULE_TITLES, supplySentence } from './supply-findings.ts';
import { isUpkeepFinding, UPKEEP_RULE_TITLES, upkeepSentence } from './upkeep-findings.ts';

/** What each rule of network, lines, feeds, limits and upkeep is called in a list of findings. */
export const PLANT_RULE_TITLES: Readonly<Record<PlantRule, string>> = {
  'card-unreadable': 'Cannot be read',
  ...NETWORK_RULE_TITLES,
  ...RUN_RULE_TITLES,
  ...SUPPLY_RULE_TITLES,
  ...UPKEEP_RULE_TITLES,
};

export type PlantFinding = Extract<Finding, PlantTrouble>;

export const isPlantFinding = (finding: Finding): finding is PlantFinding =>
  (PLANT_RULES as readonly string[]).includes(finding.rule);

/** A finding of network, lines, feeds, limits or upkeep in full. `units`: the names of its units, empty for none. */
export function plantSentence(finding: PlantFinding, units: string): string {
  if (isNetworkFinding(finding)) return networkSentence(finding);
  if (isRunFinding(finding)) return runSentence(finding, units);
  if (isSupplyFinding(finding)) return supplySentence(finding, units);
  if (isUpkeepFinding(finding)) return upkeepSentence(finding, units);
  const { card, of, field, value } = finding;
  return `The ${cardCellWords(card, field)} of ${CARD_WORDS[card]} “${of}” cannot be “${value}”. Correct it`;
}
