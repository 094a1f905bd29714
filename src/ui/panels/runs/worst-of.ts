import { nameKey } from '#engine/model/card.ts';
import type { Finding, Severity } from '#engine/model/finding.ts';
import { type RunLine, runsOfFinding } from '#engine/network/runs/run-list.ts';

/** The findings that speak of a run. */
export const findingsOfRun = (findings: readonly Finding[], { key }: Pick<RunLine, 'key'>): readonly Finding[] =>
  findings.filter((finding) => runsOfFinding(finding).some((name) => nameKey(name) === key));

/** The gravest of what is found of a run; findings are listed so. */
export const worstOf = (findings: readonly Finding[], run: Pick<RunLine, 'key'>): Severity | undefined =>
  findingsOfRun(findings, run)[0]?.severity;
