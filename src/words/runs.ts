import type { Fixture } from '#engine/model/fixture.ts';
import type { Reach } from '#engine/network/runs/measured-run.ts';
import { listed } from './listed.ts';
import { lengthWords, universesWords } from './run-names.ts';
import { counted } from './screens.ts';

/** The page of a rig's data lines. */
export const RUNS_WORDS = {
  title: 'Runs',
  list: 'Runs of this rig',
  choose: 'Run',
  none: 'No run yet. A run is one data line: from a port, a splitter or the desk, past its units, to its end.',
  add: 'Add a run…',
  addTitle: 'Add a run',
  nameOfRun: 'Name of the run',
  nameHint: 'As it is written on the cable.',
  addDone: 'Add the run',
  addSplitter: 'Add a splitter…',
  splitterTitle: 'Add a splitter to this run',
  splitterName: 'Name of the splitter',
  outputs: 'Outputs',
  splitterDone: 'Add the splitter',
  removeSplitter: 'Remove this splitter',
  loose: 'Splitters on no run',
  putHere: 'Put it on this run',
  remove: 'Remove this run',
  describe: 'Describe this run',
  undescribed: 'Units name this run, and nobody has described it.',
  facts: 'Where it begins, end, metres, notes',
  name: 'Name',
  from: 'Begins at',
  lead: 'Metres to the first unit',
  reach: 'Greatest length in metres',
  end: 'End of the line',
  notes: 'Notes',
  of: (field: string, run: string) => `${field} of run ${run}`,
  carries: (universes: readonly number[] | null) =>
    universes === null ? 'universe not known' : universes.length === 0 ? 'no universe' : universesWords(universes),
  units: (units: number) => counted(units, 'unit'),
  loads: (loads: number, most: number) => `${loads}/${most} loads`,
  length: (line: { readonly metres: number; readonly unknown: number }, reach: Reach) =>
    `${lengthWords(line)} of ${reach.metres} m`,
  unknown: (stretches: number) => `${counted(stretches, 'stretch', 'stretches')} not known`,
  ends: { terminated: 'terminated', open: 'open end', unsaid: 'end not said' },
  found: (count: number) => counted(count, 'finding'),
  reachBy: {
    run: '',
    rig: ', as the rig has it',
    practice: ', as is usual on 24 AWG (common practice)',
  },
  line: (run: string) => `Units along run ${run}`,
  empty: 'Nothing is on this run yet. Add units, or a splitter.',
  hint: 'Arrows choose, Alt with up or down moves, Delete takes off, Enter opens the slots of a unit, Ctrl+Z undoes.',
  columns: {
    place: 'Place',
    unit: 'Unit',
    what: 'Type and mode',
    address: 'Address',
    cable: 'Cable m',
    metres: 'Total m',
    loads: 'Loads',
  },
  splitter: (name: string) => `Splitter ${name}`,
  outputsWords: (outputs: number) => counted(outputs, 'output'),
  cableTo: (name: string) => `Metres of cable to ${name}`,
  atLeast: (metres: number) => `≥ ${metres}`,
  up: 'Up',
  down: 'Down',
  takeOff: 'Take off',
  slots: 'Slots',
  undo: 'Undo',
  undone: 'Taken back.',
  moved: (name: string, place: number, of: number) => `${name} is ${place} of ${of}.`,
  takenOff: (name: string) => `${name} is off this run.`,
  putOn: (units: number, run: string) => `${counted(units, 'unit')} put on run ${run}.`,
  putOnRun: (name: string, run: string) => `${name} put on run ${run}.`,
  removed: (name: string) => `${name} removed.`,
  added: (name: string) => `${name} added.`,
  outputIs: (output: number, runs: readonly string[]) =>
    runs.length === 0 ? `Output ${output} is free` : `Output ${output}: run ${listed(runs)}`,
  csv: 'Take out the run sheet as CSV',
} as const;

/** What is asked when units are put on a run. */
export const ADD_UNITS_WORDS = {
  open: 'Add units…',
  title: (run: string) => `Add units to run ${run}`,
  which: 'Which units',
  chosen: (units: number) => `${counted(units, 'unit')} chosen in the sheet`,
  free: 'Units on no run',
  position: 'Position',
  type: 'Type',
  any: 'Any',
  noPosition: 'no position',
  all: (units: number) => `All ${units} of these`,
  none: 'No unit of this position and type is on no run.',
  more: (units: number) => `and ${units} more: choose a position or a type`,
  order: 'In which order',
  orders: { given: 'as they stand in the list', place: 'by position and number' },
  where: 'Where',
  atEnd: 'at the end',
  after: (name: string) => `after ${name}`,
  done: (units: number) => `Put ${counted(units, 'unit')} on the run`,
  onOther: (units: number, runs: readonly string[]) =>
    `${counted(units, 'unit')} of these ${units === 1 ? 'is' : 'are'} on run ${listed(runs)} now, and will leave it.`,
} as const;

/** `Tern profile · 16`. */
export const whatIs = ({ type, mode }: Pick<Fixture, 'type' | 'mode'>): string =>
  [type, mode].filter((part) => part.trim() !== '').join(' · ');
