import {
  type FixtureType,
  HAZARD_KINDS,
  type HazardKind,
  type Hazards,
  LASER_CLASSES,
  type Physical,
  type Settings,
} from '../model/fixture-type.ts';
import { oneLine } from './cell-text.ts';
import { type Draft, FACT_FIELDS, type FactField } from './draft.ts';
import type { DraftTrouble } from './draft-trouble.ts';
import { factTexts } from './fact-texts.ts';

export type TypeFacts = Pick<
  FixtureType,
  'maker' | 'model' | 'shortName' | 'description' | 'physical' | 'settings' | 'hazards'
>;

/**
 * What a draft says of the whole unit. A cell that stands as the base revision has it means what it means there. A hazard
 * that cannot be read counts as there, a laser's class as unknown.
 */
export function factsOfDraft(
  facts: Draft['facts'],
  base: FixtureType | null,
): { readonly facts: TypeFacts; readonly troubles: readonly DraftTrouble[] } {
  const troubles: DraftTrouble[] = [];
  const kept = base === null ? null : factTexts(base);
  const untouched = new Set(FACT_FIELDS.filter((field) => kept !== null && kept[field] === facts[field]));
  const cell = <Value>(field: FactField, before: (type: FixtureType) => Value, read: (text: string) => Value): Value =>
    base !== null && untouched.has(field) ? before(base) : read(facts[field]);
  const unreadable = (field: FactField, text: string) => {
    troubles.push({ where: { of: 'facts', field }, kind: 'unreadable-fact', text: text.trim() });
  };
  for (const field of ['maker', 'model'] as const) {
    if (facts[field].trim() === '') troubles.push({ where: { of: 'facts', field }, kind: 'missing' });
  }
  return {
    facts: {
      maker: cell('maker', (type) => type.maker, oneLine),
      model: cell('model', (type) => type.model, oneLine),
      shortName: cell('shortName', (type) => type.shortName, oneLine),
      description: cell(
        'description',
        (type) => type.description,
        (text) => text.trim(),
      ),
      physical: physicalOf(cell, unreadable),
      settings: settingsOf(cell, unreadable),
      hazards: hazardsOf(cell, unreadable),
    },
    troubles,
  };
}

type ReadCell = <Value>(field: FactField, before: (type: FixtureType) => Value, read: (text: string) => Value) => Value;
type Unreadable = (field: FactField, text: string) => void;

function physicalOf(cell: ReadCell, unreadable: Unreadable): Physical {
  const optional =
    <Value>(field: FactField, read: (text: string) => Value | undefined) =>
    (text: string): Value | null => {
      const value = text.trim() === '' ? null : read(oneLine(text));
      if (value === undefined) unreadable(field, text);
      return value ?? null;
    };
  return {
    weight: cell('weight', (type) => type.physical.weight, optional('weight', readWeight)),
    power: cell('power', (type) => type.physical.power, optional('power', readPower)),
    powerFactor: cell('powerFactor', (type) => type.physical.powerFactor, optional('powerFactor', readPowerFactor)),
    voltage: cell('voltage', (type) => type.physical.voltage, optional('voltage', readVoltage)),
    connector: cell('connector', (type) => type.physical.connector, oneLine),
    perBreaker: cell(
      'perBreaker',
      (type) => type.physical.perBreaker,
      (text) => readPerBreaker(text, (line) => unreadable('perBreaker', line)),
    ),
  };
}

/** A number with a decimal point or comma, and its unit. A thousand with a separator (`1,200`) could be read as 1.2: no number. */
function readNumber(text: string, units: RegExp): { readonly value: number; readonly unit: string } | undefined {
  const [, digits, unit = ''] = /^(\d+(?:[.,]\d+)?|[.,]\d+)\s*(.*)$/su.exec(text) ?? [];
  if (digits === undefined || /^[1-9]\d{0,2}[.,]\d{3}$/.test(digits) || !units.test(unit)) return undefined;
  return { value: Number(digits.replace(',', '.')), unit };
}

function readWeight(text: string): number | undefined {
  const read = readNumber(text, /^(kg\.?|kilograms?)?$/iu);
  return read !== undefined && read.value > 0 ? read.value : undefined;
}

function readPower(text: string): number | undefined {
  const read = readNumber(text, /^(k?W\.?|watts?)?$/iu);
  if (read === undefined || read.value <= 0) return undefined;
  return /^k/iu.test(read.unit) ? read.value * 1000 : read.value;
}

function readPowerFactor(text: string): number | undefined {
  const [, digits] = /^(\d+(?:[.,]\d+)?|[.,]\d+)$/.exec(text) ?? [];
  const value = Number(digits?.replace(',', '.'));
  return value >= 0 && value <= 1 ? value : undefined;
}

const VOLTS = String.raw`(\d{1,5}(?:[.,]\d+)?)\s*(?:V|VAC|V\s*AC|VDC|V\s*DC|V\s*~)?`;
const VOLTAGE = new RegExp(
  String.raw`^(?:AC|DC)?\s*${VOLTS}(?:\s*(?:-|–|—|\.\.+|…|to)\s*${VOLTS})?\s*(?:[,;/]?\s*50\s*[-–/]\s*60\s*Hz)?$`,
  'iu',
);

function readVoltage(text: string): { low: number; high: number } | undefined {
  const [, first, last] = VOLTAGE.exec(text) ?? [];
  const low = Number(first?.replace(',', '.'));
  const high = last === undefined ? low : Number(last.replace(',', '.'));
  return low > 0 && high >= low ? { low, high } : undefined;
}

/** One a line: the breaker, a colon, and how many, in the manual's words. */
function readPerBreaker(text: string, unreadable: (line: string) => void): Physical['perBreaker'] {
  return text.split(/\r\n|[\n\r]/).flatMap((line) => {
    if (line.trim() === '') return [];
    const colon = line.indexOf(':');
    const breaker = oneLine(line.slice(0, Math.max(colon, 0)));
    const most = oneLine(line.slice(colon + 1));
    if (breaker !== '' && most !== '') return [{ breaker, most }];
    unreadable(line);
    return [];
  });
}

function settingsOf(cell: ReadCell, unreadable: Unreadable): Settings {
  return {
    switches: cell(
      'switches',
      (type) => type.settings.switches,
      (text) => {
        const kind = text.trim().toUpperCase();
        if (kind !== '' && kind !== 'A' && kind !== 'B') unreadable('switches', text);
        return kind === 'A' || kind === 'B' ? kind : null;
      },
    ),
    onLoss: cell(
      'onLoss',
      (type) => type.settings.onLoss,
      (text) => text.trim(),
    ),
  };
}

function hazardsOf(cell: ReadCell, unreadable: Unreadable): Hazards {
  const flag = (kind: HazardKind): boolean =>
    cell(
      kind,
      (type) => type.hazards[kind],
      (text) => {
        const said = text.trim().toLowerCase();
        if (!['', 'yes', 'no'].includes(said)) unreadable(kind, text);
        return said !== '' && said !== 'no';
      },
    );
  const flags = Object.fromEntries(HAZARD_KINDS.map((kind) => [kind, flag(kind)])) as Record<HazardKind, boolean>;
  const laser = cell(
    'laser',
    (type) => type.hazards.laser,
    (text) => {
      const said = text.trim().toUpperCase();
      const known = LASER_CLASSES.find((each) => each.toUpperCase() === said);
      if (said !== '' && known === undefined) unreadable('laser', text);
      return said === '' ? null : (known ?? 'unknown');
    },
  );
  return { laser, ...flags };
}
