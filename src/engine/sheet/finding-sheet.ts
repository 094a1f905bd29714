import { getRow } from '#base/table.ts';
import type { Finding } from '../model/finding.ts';
import type { Fixture } from '../model/fixture.ts';
import type { Rig } from '../model/rig.ts';
import { cautionLines, rowsFrom, type Sheet, type SheetCell, type SheetColumn, type Standing } from './sheet.ts';

const COLUMNS = [
  'severity',
  'finding',
  'universe',
  'first',
  'last',
  'units',
  'channels',
] as const satisfies readonly SheetColumn[];

/** One row per finding that stands, with every unit it concerns. */
export function findingSheet(rig: Rig, standing: Standing): Sheet {
  const { findings, say } = standing;
  const named = new Set(findings.flatMap((finding) => finding.fixtures));
  const rows = rowsFrom(findings, (finding): readonly SheetCell[] => {
    const fixtures = finding.fixtures.flatMap((id) => getRow(rig.fixtures, id) ?? []);
    const run = runOf(finding);
    const channels = [...new Set(fixtures.flatMap((fixture) => fixture.channel ?? []))].sort((a, b) => a - b);
    return [
      finding.severity,
      say(finding),
      run?.universe ?? null,
      run?.first ?? null,
      run?.last ?? null,
      fixtures.map(placeOf).join(', '),
      channels.join(', '),
    ];
  });
  const fixtures = [...named].flatMap((id) => getRow(rig.fixtures, id) ?? []);
  return { kind: 'findings', columns: COLUMNS, ...rows, foot: cautionLines(rig, fixtures, standing) };
}

const runOf = (finding: Finding) => ('run' in finding ? finding.run : undefined);

const placeOf = (fixture: Fixture) =>
  [fixture.position, fixture.unit]
    .map((part) => part.trim())
    .filter((part) => part !== '')
    .join(' ');
