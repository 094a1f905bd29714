import type { Bin, Budget, PackJob } from './bin.ts';
import { fillExactly } from './fill-exactly.ts';

/** With more widths and rooms than this an exact search gets nowhere. */
const FEW = 200;

/** The packing into the fewest bins, `bound` or more, that an exact search finds with a third of the budget; undefined if none is better. */
export function fewest(job: PackJob, bound: number, opened: number, budget: Budget): Bin[] | undefined {
  if (job.widths.length + job.rooms.length > FEW) return undefined;
  const share = Math.floor(budget.steps / 3 / Math.max(1, opened - bound));
  for (let most = bound; most < opened; most++) {
    const search: Budget = { steps: share };
    const bins = fillExactly(job, most, search);
    budget.steps -= share - Math.max(0, search.steps);
    if (bins !== undefined) return bins;
  }
  return undefined;
}
