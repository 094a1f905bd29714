import type { HistoryStep } from '#wire/history.ts';

/** What one person did in one go, the newest first. */
export interface Stretch {
  readonly by: string;
  readonly byName: string | null;
  /** When it began and ended; ISO 8601, UTC. */
  readonly from: string;
  readonly to: string;
  readonly steps: readonly HistoryStep[];
}

export interface Day {
  readonly day: string;
  readonly stretches: readonly Stretch[];
}

/** A pause that ends a stretch, in milliseconds. */
const PAUSE = 30 * 60_000;

/** Steps, the newest first, by the day that `dayOf` says and by who did them without a pause. */
export function groupSteps(steps: readonly HistoryStep[], dayOf: (iso: string) => string): readonly Day[] {
  const days: { day: string; stretches: { steps: HistoryStep[] }[] }[] = [];
  let before: HistoryStep | undefined;
  for (const step of steps) {
    const name = dayOf(step.at);
    let day = days.at(-1);
    if (day?.day !== name) {
      day = { day: name, stretches: [] };
      days.push(day);
      before = undefined;
    }
    const goesOn = before?.by === step.by && Date.parse(before.at) - Date.parse(step.at) < PAUSE;
    if (goesOn) day.stretches.at(-1)?.steps.push(step);
    else day.stretches.push({ steps: [step] });
    before = step;
  }
  return days.map(({ day, stretches }) => ({ day, stretches: stretches.flatMap((each) => stretchOf(each.steps)) }));
}

function stretchOf(steps: readonly HistoryStep[]): readonly Stretch[] {
  const [last, first] = [steps[0], steps.at(-1)];
  if (last === undefined || first === undefined) return [];
  return [{ by: last.by, byName: last.byName, from: first.at, to: last.at, steps }];
}
