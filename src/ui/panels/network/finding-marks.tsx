import { groupBy } from '#base/group-by.ts';
import type { PlantFinding } from '#words/plant-findings.ts';
import { PLANT_RULE_TITLES, plantSentence } from '#words/plant-findings.ts';
import { Mark } from '../../kit/mark.tsx';

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
