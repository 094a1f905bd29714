import type { Finding } from '../model/finding.ts';
import { RULES } from './severity.ts';

const RANK = new Map(RULES.map((rule, rank) => [rule, rank]));

/**
 * The order in which findings are listed: by rule, gravest rules first; then by universe and slot or by channel; then by
 * key. It depends on the findings alone. [CH22]
 */
export function compareFindings(a: Finding, b: Finding): number {
  const byRule = (RANK.get(a.rule) ?? 0) - (RANK.get(b.rule) ?? 0);
  if (byRule !== 0) return byRule;
  const byPlace = whereOf(a) - whereOf(b);
  if (byPlace !== 0) return byPlace;
  return a.key < b.key ? -1 : a.key > b.key ? 1 : 0;
}

function whereOf(finding: Finding): number {
  if ('run' in finding) return finding.run.universe * 1024 + finding.run.first;
  return 'channel' in finding ? finding.channel : 0;
}
