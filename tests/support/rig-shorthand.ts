import { setRow } from '#base/table.ts';
import { formatAddress, parseAddress } from '#engine/address/notation.ts';
import { applyEdits } from '#engine/model/apply-edits.ts';
import type { Edit, Plan } from '#engine/model/edit.ts';
import { ADDRESS_FIELDS } from '#engine/model/field.ts';
import type { Finding } from '#engine/model/finding.ts';
import type { Cells, Fixture } from '#engine/model/fixture.ts';
import { fixtureId, modeId } from '#engine/model/ids.ts';
import { EMPTY_RIG, type Rig } from '#engine/model/rig.ts';
import { rowsInOrder } from '#engine/model/row-order.ts';

/**
 * Builds a rig of one line per fixture: `2:101 Spot/16 x4 #11 @LX1.4`.
 *
 * - address, `-` for none, breaks joined by `+`: `2:101+3:1`, `-+3:1`
 * - type and slots per break, `Bar/10+20`; the mode is called by its slots. `Spot/?` has a mode the rig does not know.
 * - `x4`: four of them, end to end, channels and units counting on
 * - `#11`: channel; `@LX1.4`: position and unit; `!Ona`: locked, with that reason
 *
 * Fixtures are called f1, f2, … in the order of the lines, and that is the order of their rows.
 */
export function rigOf(text: string): Rig {
  let rig = EMPTY_RIG;
  const edits: Edit[] = [];
  for (const line of text.split('\n').map((each) => each.trim())) {
    if (line === '') continue;
    const words = wordsOf(line);
    if (words.footprints !== undefined) rig = withMode(rig, words.type, words.mode, words.footprints);
    for (let at = 0; at < words.count; at++) {
      const row = edits.length + 1;
      edits.push({ kind: 'add-fixture', fixture: fixtureId(`f${row}`), cells: { ...cellsAt(words, at), order: row } });
    }
  }
  return applyEdits(rig, edits);
}

function withMode(rig: Rig, type: string, mode: string, footprints: readonly number[]): Rig {
  return { ...rig, modes: setRow(rig.modes, { id: modeId(type, mode), type, mode, footprints, pin: null }) };
}

interface Words {
  readonly starts: readonly (number | null)[];
  readonly type: string;
  readonly mode: string;
  readonly footprints: readonly number[] | undefined;
  readonly count: number;
  readonly channel: number | null;
  readonly position: string;
  readonly unit: string;
  readonly lock: string;
}

function wordsOf(line: string): Words {
  const [addresses = '-', kind = '/', ...rest] = line.split(/\s+/);
  const [type = '', mode = ''] = kind.split('/');
  const find = (mark: string) => rest.find((word) => word.startsWith(mark))?.slice(1);
  const [position = '', unit = ''] = (find('@') ?? '').split('.');
  const channel = find('#');
  return {
    starts: addresses.split('+').map((each) => (each === '-' ? null : addressOf(each))),
    type,
    mode,
    footprints: /^\d+(\+\d+)*$/.test(mode) ? mode.split('+').map(Number) : undefined,
    count: Number(find('x') ?? 1),
    channel: channel === undefined ? null : Number(channel),
    position,
    unit,
    lock: find('!') ?? '',
  };
}

/** The address `2:101` and the like; throws on what is not one. */
export function addressOf(text: string) {
  const address = parseAddress(text);
  if (!address.ok) throw new Error(`${text}: ${address.error}`);
  return address.value;
}

function cellsAt(words: Words, at: number): Cells {
  const step = (words.footprints ?? [1]).reduce((total, footprint) => total + footprint, 0);
  const starts = words.starts.map((start, part) => [ADDRESS_FIELDS[part], start === null ? null : start + at * step]);
  return {
    type: words.type,
    mode: words.mode,
    channel: words.channel === null ? null : words.channel + at,
    position: words.position,
    lock: words.lock === '' ? null : words.lock,
    unit: /^\d+$/.test(words.unit) ? String(Number(words.unit) + at) : words.unit,
    ...Object.fromEntries(starts),
  };
}

/** `f1 2:101 Spot/16 #11 @LX1.4`, one line per fixture in row order. */
export function printRig(rig: Rig): string[] {
  return rowsInOrder(rig).map(printFixture);
}

function printFixture(fixture: Fixture): string {
  const { id, addresses, type, mode, channel, position, unit } = fixture;
  const starts = addresses.map((each) => (each === null ? '-' : formatAddress(each))).join('+') || '-';
  const place = position + unit === '' ? '' : `@${position}.${unit}`;
  return [id, starts, `${type}/${mode}`, channel === null ? '' : `#${channel}`, place].filter((word) => word).join(' ');
}

/** `blocker slots-claimed-twice 1:374-380 f4 f5`. */
export function printFinding(finding: Finding): string {
  const run = 'run' in finding ? `${finding.run.universe}:${finding.run.first}-${finding.run.last}` : '';
  const channel = 'channel' in finding ? `#${finding.channel}` : '';
  const over = 'over' in finding ? `over ${finding.over}` : '';
  const part = 'part' in finding && finding.part !== null ? `break ${finding.part}` : '';
  const cell = 'cell' in finding ? `${finding.cell.field} ${JSON.stringify(finding.cell.value)}` : '';
  return [finding.severity, finding.rule, run, part, over, channel, cell, ...finding.fixtures]
    .filter((word) => word !== '')
    .join(' ');
}

/** `f1 address 2:101` for each cell a plan sets, in its order. */
export function printPlan(plan: Plan): string[] {
  return plan.edits.map((edit) => {
    if (edit.kind !== 'set-cell') return edit.kind;
    const isAddress = (ADDRESS_FIELDS as readonly string[]).includes(edit.field);
    const value =
      isAddress && typeof edit.value === 'number' ? formatAddress(addressOf(String(edit.value))) : edit.value;
    return `${edit.fixture} ${edit.field} ${value ?? '-'}`;
  });
}
