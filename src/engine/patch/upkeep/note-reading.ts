import { type Result, refuse } from '#base/result.ts';
import { getRow } from '#base/table.ts';
import { CARD_CELLS, parseCardText, readCardCell } from '../../model/card.ts';
import { setCard } from '../../model/card-edits.ts';
import type { Plan } from '../../model/edit.ts';
import type { Reading } from '../../model/record.ts';
import type { Rig } from '../../model/rig.ts';
import { cellEdits, planOf } from '../chosen.ts';
import type { PlanRefusal } from '../plan-refusal.ts';
import type { Upkeep } from './fault-plans.ts';

export interface ReadingNote extends Upkeep {
  readonly of: Reading['of'];
  /** As somebody typed it: hours, or a firmware. */
  readonly text: string;
  /** Whether a firmware becomes that of the unit too. */
  readonly cell: 'written' | 'left';
}

/** Writes down what was read off a unit; a firmware becomes the unit's, unless that is to be left. [UK6] */
export function noteReading(rig: Rig, note: ReadingNote): Result<Plan, PlanRefusal> {
  const { id, unit, called, of, by, on } = note;
  const fixture = getRow(rig.fixtures, unit);
  if (fixture === undefined) return refuse({ code: 'no-such-fixture', fixture: unit });
  const cells = { unit, called, of, by: by.trim(), on: on.trim() };
  if (of === 'firmware') {
    const firmware = note.text.trim();
    if (firmware === '') return refuse({ code: 'nothing-said', of: 'firmware' });
    const cell = note.cell === 'written' ? cellEdits(fixture, 'firmware', firmware) : [];
    return planOf(rig, 'note-reading', [...setCard('reading', id, { ...cells, firmware }), ...cell]);
  }
  const hours = readCardCell(CARD_CELLS.reading.hours, parseCardText(CARD_CELLS.reading.hours, note.text));
  if (hours === null) return refuse({ code: 'nothing-said', of: 'hours' });
  return planOf(rig, 'note-reading', setCard('reading', id, { ...cells, hours }));
}
