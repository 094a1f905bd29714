import { nameKey } from '../model/card.ts';
import type { Finding } from '../model/finding.ts';
import type { Rig } from '../model/rig.ts';
import type { Station } from '../network/runs/measured-run.ts';
import { type RunLine, runList, runsOfFinding } from '../network/runs/run-list.ts';
import { cellsReader, columnsFor } from './fixture-cells.ts';
import type { PatchColumn } from './patch-format.ts';
import {
  cautionLines,
  findingLines,
  rowsFromEach,
  type Sheet,
  type SheetCell,
  type SheetColumn,
  type Standing,
} from './sheet.ts';

const BEFORE = ['run', 'runFrom', 'runPlace', 'runLink'] as const satisfies readonly SheetColumn[];
const OF_UNIT = [
  'position',
  'unit',
  'type',
  'mode',
  'universe',
  'slot',
  'universe2',
  'slot2',
  'universe3',
  'slot3',
  'universe4',
  'slot4',
] as const satisfies readonly PatchColumn[];
const BEHIND = [
  'cable',
  'runMetres',
  'runUnknown',
  'runLoads',
  'runFindings',
] as const satisfies readonly SheetColumn[];

/** Run by run, what hangs on it in the order of the line; a run with nothing on it has a row of its own. [RN19] */
export function runSheet(rig: Rig, standing: Standing): Sheet {
  const runs = runList(rig);
  const fixtures = runs.flatMap(({ line }) =>
    line.stations.flatMap(({ link }) => (link.kind === 'unit' ? [link.fixture] : [])),
  );
  const columns = columnsFor(fixtures, OF_UNIT);
  const cells = cellsReader(rig, columns);
  const said = saidByPlace(standing);
  const head = (run: RunLine) => [run.name, standing.runs.source(run.from)];
  const empty: readonly SheetCell[] = columns.map(() => null);
  const rowOf = (run: RunLine, { link, place, cable, metres, unknown, loads }: Station): readonly SheetCell[] => [
    ...head(run),
    place,
    link.kind === 'unit' ? standing.runs.unit : standing.runs.splitter(link.splitter.name),
    ...(link.kind === 'unit' ? cells(link.fixture) : empty),
    cable,
    metres,
    unknown,
    loads,
    said(run, link.id, place),
  ];
  const rows = rowsFromEach(
    runs,
    runs.reduce((sum, { line }) => sum + Math.max(1, line.stations.length), 0),
    (run) =>
      run.line.stations.length > 0
        ? run.line.stations.map((station) => rowOf(run, station))
        : [[...head(run), null, null, ...empty, null, null, null, null, said(run, '', 1)]],
  );
  const foot = [...cautionLines(rig, fixtures, standing), ...findingLines(standing)];
  return { kind: 'runs', columns: [...BEFORE, ...columns, ...BEHIND], ...rows, foot };
}

/** What is found of runs, beside the unit it names; what names none, in the first row of its run. */
function saidByPlace({ findings, say }: Standing): (run: RunLine, id: string, place: number) => SheetCell {
  const ofUnit = new Map<string, string[]>();
  const ofRun = new Map<string, string[]>();
  for (const finding of findings) {
    const runs = runsOfFinding(finding);
    if (runs.length === 0) continue;
    const [into, at] = finding.fixtures.length > 0 ? [ofUnit, finding.fixtures] : [ofRun, runs.map(nameKey)];
    for (const each of at as readonly string[]) into.set(each, [...(into.get(each) ?? []), sentence(finding, say)]);
  }
  return (run, id, place) => {
    const all = [...(place === 1 ? (ofRun.get(run.key) ?? []) : []), ...(ofUnit.get(id) ?? [])];
    return all.length === 0 ? null : all.join('. ');
  };
}

const sentence = (finding: Finding, say: Standing['say']) => `${finding.severity}: ${say(finding)}`;
