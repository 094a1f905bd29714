import { getRow, rowsOf } from '#base/table.ts';
import { type Fault, type Hire, recordOf } from '#engine/model/record.ts';
import type { Rig } from '#engine/model/rig.ts';
import { hazardsOfRig, type RigHazard } from '#engine/type/hazards-of-rig.ts';
import { unitName } from './findings.ts';
import { hazardWords } from './library.ts';
import { listed } from './listed.ts';
import { counted } from './screens.ts';
import { HIRE_STATE_WORDS, hireText } from './upkeep.ts';

/** What comes along with a rig that is handed over, beside its patch: a line each. */
export interface HandoverLines {
  /** What can hurt, and who answers for it. */
  readonly hazards: readonly string[];
  readonly faults: readonly string[];
  /** What is hired in and has to go back. */
  readonly hires: readonly string[];
  readonly notes: readonly string[];
}

export function handoverLines(rig: Rig): HandoverLines {
  const { faults, hires } = recordOf(rig.cards);
  const notes = [...rowsOf(rig.notes)].sort((a, b) => a.order - b.order || (a.id < b.id ? -1 : 1));
  return {
    hazards: hazardsOfRig(rig).map(hazardLine),
    faults: faults.filter(({ state }) => state === 'open').map((fault) => faultLine(fault, rig)),
    hires: hires.filter(({ returned }) => returned === '').map(hireLine),
    notes: notes.map(({ text }) => text),
  };
}

/** `Bar 1 · 4: shutter sticks (seen by Ona Reeve on 2026-11-20)`. */
function faultLine(fault: Fault, rig: Rig): string {
  const fixture = fault.unit === '' ? undefined : getRow(rig.fixtures, fault.unit);
  const name = fixture === undefined && fault.called !== '' ? fault.called : unitName(fixture);
  const seen = [
    fault.seenBy === '' ? '' : `by ${fault.seenBy}`,
    fault.seenOn === '' ? '' : `on ${day(fault.seenOn)}`,
  ].filter((part) => part !== '');
  return `${name}: ${fault.what}${seen.length === 0 ? '' : ` (seen ${seen.join(' ')})`}`;
}

/** `2 × hazer of Corvid Hire, due back 2026-12-01. Crate 4`. */
function hireLine(hire: Hire): string {
  const day = hire.due === '' ? `, ${HIRE_STATE_WORDS['no-day']}` : '';
  return `${hireText(hire)}${day}${hire.notes === '' ? '' : `. ${hire.notes}`}`;
}

function hazardLine({ hazards, units, types, toSign, signature, open }: RigHazard): string {
  const what = `${capital(listed(hazardWords(hazards)))}: ${counted(units, 'unit')} (${types.join(', ')}).`;
  if (toSign.length === 0) return `${what} Nobody has to sign for it; mind it all the same.`;
  if (signature === undefined) return `${what} Nobody answers for it yet: name the person responsible.`;
  const since = `${what} ${signature.person} answers for it with the giver, since ${day(signature.on)}; name who does with you.`;
  return open.length === 0 ? since : `${since} Nobody yet for ${listed(open)}.`;
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** The day stays in one piece. */
const day = (on: string) => on.replaceAll('-', '\u2011');
