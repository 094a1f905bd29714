import { nameKey } from '#engine/model/card.ts';
import { setCard } from '#engine/model/card-edits.ts';
import type { Edit } from '#engine/model/edit.ts';
import type { Cells } from '#engine/model/fixture.ts';

interface DemoRun {
  readonly name: string;
  readonly from: string;
  /** Metres to the first unit. */
  readonly lead: number;
  /** Whole positions, in the order in which the cable passes them, with the metres to the first unit of each and between its units. */
  readonly positions: readonly (readonly [position: string, to: number, between: number])[];
  readonly end: 'terminated' | null;
}

const SPLITTER = 'demo-split-1';

/** Three data lines of the fit-up; nobody has looked yet whether the last one is terminated. */
const RUNS: readonly DemoRun[] = [
  {
    name: 'Bridges',
    from: 'cable 1',
    lead: 25,
    positions: [
      ['Front bridge', 25, 2],
      ['Second bridge', 12, 2.5],
    ],
    end: 'terminated',
  },
  { name: 'Bar 1', from: `splitter ${SPLITTER}.1`, lead: 18, positions: [['Bar 1', 18, 2]], end: 'terminated' },
  {
    name: 'Bars 4 and 5',
    from: 'cable 3',
    lead: 30,
    positions: [
      ['Bar 4', 30, 1.5],
      ['Bar 5', 8, 1.5],
    ],
    end: null,
  },
];

/** What is said of the runs, and of the splitter at the end of the bridges. */
export const RUN_EDITS: readonly Edit[] = [
  ...RUNS.flatMap(({ name, from, lead, end }) => setCard('run', nameKey(name), { name, from, lead, end })),
  ...setCard('splitter', SPLITTER, {
    name: 'Bridge splitter',
    run: 'Bridges',
    along: 1_000_000,
    cable: 6,
    outputs: 4,
  }),
];

/** The cells that put a unit of a position, counted from 1, on its run. */
export function runCells(position: string, unit: number): Cells {
  const run = RUNS.find(({ positions }) => positions.some(([each]) => each === position));
  if (run === undefined) return {};
  const at = run.positions.findIndex(([each]) => each === position);
  const [, to, between] = run.positions[at] ?? ['', 0, 0];
  const cable = unit > 1 ? between : at === 0 ? null : to;
  return { run: run.name, along: (at * 100 + unit) * 1024, cable };
}
