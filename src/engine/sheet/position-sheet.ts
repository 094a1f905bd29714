import { nameKey } from '../model/card.ts';
import type { Rig } from '../model/rig.ts';
import { heldBy, type PositionLoad, positionLoads } from '../supply/position-loads.ts';
import { rounded } from './rounded.ts';
import {
  cautionLines,
  findingLines,
  plainCautions,
  rowsFromEach,
  type Sheet,
  type SheetCell,
  type SheetColumn,
  type Standing,
} from './sheet.ts';

const COLUMNS = [
  'position',
  'unit',
  'channel',
  'type',
  'mode',
  'weight',
  'count',
  'sum',
  'unknown',
  'extra',
  'limit',
  'person',
  'on',
  'remaining',
  'standing',
] as const satisfies readonly SheetColumn[];

/**
 * One row per unit by position and number; the last of a position has the sum of those known, how many are not, and what may hang there
 * by whose word. A position of a limit without units has one row. [SU8]
 */
export function positionSheet(rig: Rig, standing: Standing): Sheet {
  const positions = positionLoads(rig);
  const empty = positions.filter(({ units }) => units.length === 0).length;
  const said = findingsByPosition(standing);
  const rows = rowsFromEach(positions, rig.fixtures.size + empty, (load) => rowsOfPosition(load, said));
  const fixtures = positions.flatMap(({ units }) => units.map(({ fixture }) => fixture));
  const cautions = [...plainCautions(standing.loads.positionCautions), ...cautionLines(rig, fixtures, standing)];
  return { kind: 'positions', columns: COLUMNS, ...rows, foot: [...cautions, ...findingLines(standing)] };
}

type Said = ReadonlyMap<string, readonly string[]>;

const NO_UNIT: readonly SheetCell[] = [null, null, null, null, null];
const NO_SUM: readonly SheetCell[] = [null, null, null, null, null, null, null, null, null];

function* rowsOfPosition(load: PositionLoad, said: Said): Generator<readonly SheetCell[]> {
  const { position, units } = load;
  const sums = sumsOf(load, said);
  if (units.length === 0) yield [position, ...NO_UNIT, ...sums];
  for (const [at, { fixture, kilograms }] of units.entries()) {
    const unit = [fixture.unit, fixture.channel, fixture.type, fixture.mode, kilograms];
    yield [position, ...unit, ...(at === units.length - 1 ? sums : NO_SUM)];
  }
}

function sumsOf(load: PositionLoad, said: Said): readonly SheetCell[] {
  const { key, units, unknown, kilograms, limit } = load;
  // Nothing, rather than 0, where there are units and not one is known.
  const isKnown = units.length === 0 || unknown.length < units.length;
  return [
    units.length,
    isKnown ? rounded(kilograms, 2) : null,
    unknown.length,
    limit?.extra ?? null,
    limit?.kilograms ?? null,
    limit?.person ?? '',
    limit?.on ?? '',
    limit === undefined ? null : rounded(limit.kilograms - heldBy(load), 2),
    (said.get(key) ?? []).join('; '),
  ];
}

function findingsByPosition({ findings, say }: Standing): Said {
  const said = new Map<string, string[]>();
  for (const finding of findings) {
    if (!isOfLimit(finding.rule) || !('position' in finding)) continue;
    const key = nameKey(finding.position);
    said.set(key, [...(said.get(key) ?? []), say(finding)]);
  }
  return said;
}

const isOfLimit = (rule: string) =>
  rule === 'position-over-limit' || rule === 'position-weight-unknown' || rule === 'limit-unsigned';
