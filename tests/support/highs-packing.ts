import createSolver from 'highs';

/** A way to fill one bin: how many of each width, as many as fit beside each other and are wanted at all. */
type Pattern = readonly number[];

const solver = createSolver();

/**
 * The fewest bins for few different widths, by whole-number programming over all maximal ways to fill one bin (P. Gilmore, R. Gomory, 1961): a
 * general-purpose solver that knows nothing of bins. A second opinion only: on a model with bins that are alike HiGHS has called 21 optimal
 * where 20 is. This model has none, and its answer is held against an exact search.
 */
export const fewestByHighs = async (widths: readonly number[], capacity: number): Promise<number> =>
  Math.round(await solve(widths, capacity, 'whole'));

/** The bound of Gilmore and Gomory: bins counted in fractions. No packing takes fewer than this, rounded up. */
export const boundByHighs = async (widths: readonly number[], capacity: number): Promise<number> =>
  Math.ceil((await solve(widths, capacity, 'fractional')) - 1e-6);

function patternsOf(classes: readonly number[], wanted: readonly number[], capacity: number): readonly Pattern[] {
  const patterns: Pattern[] = [];
  const add = (at: number, left: number, picked: readonly number[]): void => {
    const width = classes[at];
    if (width === undefined) {
      // Maximal: nothing that is still wanted fits beside it.
      if (classes.every((each, n) => each > left || picked[n] === wanted[n])) patterns.push(picked);
      return;
    }
    const most = Math.min(wanted[at] ?? 0, Math.floor(left / width));
    for (let count = most; count >= 0; count--) add(at + 1, left - count * width, [...picked, count]);
  };
  add(0, capacity, []);
  return patterns;
}

async function solve(widths: readonly number[], capacity: number, how: 'whole' | 'fractional'): Promise<number> {
  const counts = new Map<number, number>();
  for (const width of widths) counts.set(width, (counts.get(width) ?? 0) + 1);
  const classes = [...counts.keys()].sort((a, b) => b - a);
  const wanted = classes.map((width) => counts.get(width) ?? 0);
  const patterns = patternsOf(classes, wanted, capacity);
  const names = patterns.map((_, at) => `x${at}`);
  const rows = wanted.map((count, n) => {
    const terms = patterns.flatMap((pattern, at) => ((pattern[n] ?? 0) > 0 ? [`${pattern[n]} x${at}`] : []));
    return ` w${n}: ${wrapped(terms, ' + ')} >= ${count}`;
  });
  const general = how === 'whole' ? [`General\n ${wrapped(names, ' ')}`] : [];
  const text = ['Minimize', ` bins: ${wrapped(names, ' + ')}`, 'Subject To', ...rows, ...general, 'End'].join('\n');
  const { Status: status, ObjectiveValue: value } = (await solver).solve(text, { time_limit: 20 });
  if (status !== 'Optimal') throw new Error(`HiGHS says ${status} of ${patterns.length} patterns`);
  return value;
}

/** Lines of the LP format must not grow too long. */
const wrapped = (terms: readonly string[], by: string): string => {
  const lines: string[] = [];
  for (let at = 0; at < terms.length; at += 20) lines.push(terms.slice(at, at + 20).join(by));
  return lines.join(`${by}\n  `);
};
