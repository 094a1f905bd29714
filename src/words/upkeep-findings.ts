import type { Finding } from '#engine/model/finding.ts';
import { UPKEEP_RULES, type UpkeepTrouble } from '#engine/model/upkeep-trouble.ts';

export const UPKEEP_RULE_TITLES: Readonly<Record<UpkeepTrouble['rule'], string>> = { 'fault-open': 'Open fault' };

type UpkeepFinding = Extract<Finding, UpkeepTrouble>;

export const isUpkeepFinding = (finding: Finding): finding is UpkeepFinding =>
  (UPKEEP_RULES as readonly string[]).includes(finding.rule);

/** `LX 1 · 5 has a fault: “no tilt”, seen by Bram Kettle on 2026-11-20. Mend it, or swap the device`. */
export function upkeepSentence({ what, seenBy, seenOn }: UpkeepFinding, units: string): string {
  return `${units} has a fault: “${what}”${seenText(seenBy, seenOn)}. Mend it, or swap the device`;
}

/** `, seen by Bram Kettle on 2026-11-20`, as far as it is known. */
function seenText(by: string, on: string): string {
  if (by === '' && on === '') return '';
  return `, seen${by === '' ? '' : ` by ${by}`}${on === '' ? '' : ` on ${on}`}`;
}
