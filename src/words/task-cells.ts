import type { RowDifference } from '#base/table.ts';
import { unreachable } from '#base/unreachable.ts';
import type { RigTask, UnitTask } from '#engine/diff/tasks.ts';
import type { Card, CardField } from '#engine/model/card.ts';
import type { Fixture } from '#engine/model/fixture.ts';
import type { Mode, Position, Signature, UniverseLabel, WantedFirmware } from '#engine/model/rig.ts';
import { formatFootprints } from '#engine/sheet/patch-format.ts';
import type { TaskCells, TaskStanding } from '#engine/sheet/task-sheet.ts';
import { cardCellWords } from './cards.ts';
import { unitNumber } from './compare.ts';
import { FIELD_WORDS, unitName } from './findings.ts';
import { CAUTION_FOOT, hazardCautions } from './fixture-types.ts';
import { CIRCUIT_CAUTIONS, POSITION_CAUTIONS } from './loads.ts';
import { cardName, cardValue, RIG_TASK_TITLES, rowName, settings, shown, typed, UNIT_TASK_TITLES } from './tasks.ts';

/** What is to be done at a unit with what was and what is to be apart, for the columns of a table. */
export function unitTaskCells({ kind, before, after, fields }: UnitTask): TaskCells {
  const what = UNIT_TASK_TITLES[kind];
  switch (kind) {
    case 'take-down':
      return { what, before: typed(before).trim(), after: '' };
    case 'hang':
      return { what, before: '', after: `${typed(after)}${settings(after)}`.trim() };
    case 'move':
      return { what, before: placeOf(before), after: placeOf(after) };
    case 'swap':
    case 'set-mode':
    case 'set-address':
    case 'plug':
    case 'wire':
    case 'colour':
    case 'firmware':
    case 'paper': {
      // The title says what a field of its own is.
      const isNamed = fields.length > 1 || kind === 'wire' || kind === 'paper' || kind === 'plug';
      const side = (unit: Fixture | undefined) =>
        fields.map((field) => (isNamed ? `${FIELD_WORDS[field]} ` : '') + shown(unit, field)).join(', ');
      return { what, before: side(before), after: side(after) };
    }
    default:
      return unreachable(kind);
  }
}

const placeOf = (unit: Fixture | undefined): string => (unit === undefined ? '' : unitName(unit));

/** What is to be done at no unit, in the same columns. */
export function rigTaskCells(task: RigTask): TaskCells {
  const { before, after } = task.row;
  const [part = ''] = task.key.split(' ', 1);
  if (part === 'card') return cardCells(task);
  const what = `${RIG_TASK_TITLES[task.kind]}: ${rowName(part, after ?? before)}`;
  return { what, before: rowValue(part, before), after: rowValue(part, after) };
}

function cardCells(task: RigTask): TaskCells {
  const { before, after } = task.row as RowDifference<Card>;
  const card = after ?? before;
  if (card === undefined) return { what: RIG_TASK_TITLES[task.kind], before: '', after: '' };
  const all = [...new Set([...Object.keys(before?.cells ?? {}), ...Object.keys(after?.cells ?? {})])] as CardField[];
  const unlike = all.filter((field) => before?.cells[field] !== after?.cells[field]);
  const side = (row: Card | undefined) =>
    row === undefined
      ? ''
      : unlike.map((field) => `${cardCellWords(card.kind, field)} ${cardValue(row.cells[field])}`).join(', ');
  return {
    what: `${RIG_TASK_TITLES[task.kind]}: ${cardName(card, task.of)}`,
    before: side(before),
    after: side(after),
  };
}

/** What a row of the record says, beside its name. */
function rowValue(part: string, row: { readonly id: string } | undefined): string {
  if (row === undefined) return '';
  switch (part) {
    case 'mode': {
      const { footprints, pin } = row as Mode;
      return `${formatFootprints(footprints)} slots${pin === null ? '' : `, revision ${pin.number} of the library`}`;
    }
    case 'position':
      return `place ${(row as Position).order}`;
    case 'universe':
      return (row as UniverseLabel).label;
    case 'wanted':
      return (row as WantedFirmware).version;
    case 'signature': {
      const { person, on } = row as Signature;
      return [person, on].filter((text) => text !== '').join(', ');
    }
    default:
      return String((row as { readonly text?: string }).text ?? '');
  }
}

/** How tasks are said on a sheet, with the usual cautions. */
export const TASK_STANDING: TaskStanding = {
  unit: unitNumber,
  unitTask: unitTaskCells,
  rigTask: rigTaskCells,
  positionCautions: POSITION_CAUTIONS,
  circuitCautions: CIRCUIT_CAUTIONS,
  cautions: hazardCautions,
  cautionFoot: CAUTION_FOOT,
};
