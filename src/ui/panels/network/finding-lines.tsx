import { groupBy } from '#base/group-by.ts';
import type { PlantFinding } from '#words/plant-findings.ts';
import { PLANT_RULE_TITLES, plantSentence } from '#words/plant-findings.ts';
import { Mark } from '../../kit/mark.tsx';

/** Findings in full, beside what they are about. */
export function FindingLines({ findings }: { readonly findings: readonly PlantFinding[] }) {
  if (findings.length === 0) return null;
  return (
    <ul className="flex flex-col gap-0.5 py-1.5">
      {findings.map((finding) => (
        <li key={finding.key} className="flex gap-2 [overflow-wrap:anywhere]">
          <Mark severity={finding.severity} />
          <span>{plantSentence(finding, '')}</span>
        </li>
      ))}
    </ul>
  );
}

/** Findings by their names alone, each name once, where the sentences stand near. */
export function FindingMarks({ findings }: { readonly findings: readonly PlantFinding[] }) {
  return Array.from(
    groupBy(findings, ({ rule }) => rule),
    ([rule, same]) => (
      <span
        key={rule}
        className="block whitespace-nowrap max-sm:whitespace-normal"
        title={same.map((finding) => plantSentence(finding, '')).join('. ')}
      >
        <Mark severity={same[0]?.severity ?? 'note'} className="mr-1" />
        {PLANT_RULE_TITLES[rule]}
      </span>
    ),
  );
}
