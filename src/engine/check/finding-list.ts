import type { Finding } from '../model/finding.ts';
import { compareFindings } from './compare-findings.ts';

/** `list`, in the order of `compareFindings`, without `removed` and with `added` put where they belong. */
export function mergeFindings(
  list: readonly Finding[],
  removed: ReadonlySet<Finding>,
  added: readonly Finding[],
): readonly Finding[] {
  const stayed = removed.size === 0 ? list : list.filter((finding) => !removed.has(finding));
  if (added.length === 0) return stayed;
  const arriving = [...added].sort(compareFindings);
  const merged: Finding[] = [];
  let from = 0;
  for (const finding of arriving) {
    const at = placeFor(stayed, finding, from);
    for (; from < at; from++) merged.push(stayed[from] as Finding);
    merged.push(finding);
  }
  for (; from < stayed.length; from++) merged.push(stayed[from] as Finding);
  return merged;
}

/** A short list, in the same order, with `finding` put where it belongs. */
export function withFinding(list: readonly Finding[], finding: Finding): readonly Finding[] {
  if (list.length === 0) return [finding];
  const longer = list.slice();
  longer.splice(placeFor(list, finding, 0), 0, finding);
  return longer;
}

/** A short list without `finding`. */
export function withoutFinding(list: readonly Finding[], finding: Finding): readonly Finding[] {
  return list.filter((each) => each !== finding);
}

function placeFor(list: readonly Finding[], finding: Finding, from: number): number {
  let low = from;
  let high = list.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (compareFindings(list[middle] as Finding, finding) < 0) low = middle + 1;
    else high = middle;
  }
  return low;
}
