import { FACT_FIELDS, type FactField } from '../draft/draft.ts';
import type { FixtureType, TypeMode } from '../model/fixture-type.ts';
import { canonicalText } from './content-hash.ts';
import { type ChartUse, type ModeChart, modeChart } from './type-chart.ts';

/** What differs between two types, or two revisions of one. */
export interface TypeComparison {
  readonly facts: readonly FactChange[];
  readonly added: readonly TypeMode[];
  readonly removed: readonly TypeMode[];
  readonly changed: readonly ModeChange[];
  /**
   * They differ, and in nothing of the above: in what no slot chart shows. That is the parts as such, the identity, virtual
   * channels and channels without a place, snapping and masters, and what a function stands at that is not the first.
   */
  readonly unseen: boolean;
}

/** A fact as text; empty where it is not stated or does not hold. */
export interface FactChange {
  readonly fact: FactField;
  readonly before: string;
  readonly after: string;
}

/** A mode of the same name on both sides. */
export interface ModeChange {
  readonly mode: string;
  readonly description: TextChange | null;
  /** Firmware versions, separated by commas. */
  readonly firmware: TextChange | null;
  /** Every slot that is not the same on both sides, by break and slot. */
  readonly slots: readonly SlotChange[];
}

interface TextChange {
  readonly before: string;
  readonly after: string;
}

/** A slot, and what it does on each side; null where the break does not reach it. */
export interface SlotChange {
  readonly break: number;
  readonly slot: number;
  readonly before: readonly ChartUse[] | null;
  readonly after: readonly ChartUse[] | null;
}

/** Slot by slot: modes are the same by their names, slots by their numbers. Nothing differs exactly when the types say the same. */
export function compareTypes(before: FixtureType, after: FixtureType): TypeComparison {
  const facts = changedFacts(before, after);
  const modes = pairs(before.modes, after.modes);
  const added = modes.flatMap(({ left, right }) => (left === undefined && right !== undefined ? [right] : []));
  const removed = modes.flatMap(({ left, right }) => (left !== undefined && right === undefined ? [left] : []));
  const changed = modes.flatMap(({ left, right }) =>
    left === undefined || right === undefined ? [] : changesOfMode([before, left], [after, right]),
  );
  const seen = facts.length + added.length + removed.length + changed.length > 0;
  return { facts, added, removed, changed, unseen: !seen && canonicalText(before) !== canonicalText(after) };
}

/** Whether the two types say the same. */
export const saysTheSame = ({ facts, added, removed, changed, unseen }: TypeComparison): boolean =>
  facts.length + added.length + removed.length + changed.length === 0 && !unseen;

/** Each fact of a type as text, in the order in which they are shown; empty where it is not stated or does not hold. */
export function typeFacts(type: FixtureType): ReadonlyMap<FactField, string> {
  return new Map(FACT_FIELDS.map((fact) => [fact, factOf(type, fact)]));
}

function factOf({ physical, settings, hazards, ...names }: FixtureType, fact: FactField): string {
  switch (fact) {
    case 'maker':
    case 'model':
    case 'shortName':
    case 'description':
      return names[fact];
    case 'weight':
    case 'power':
    case 'powerFactor':
      return physical[fact] === null ? '' : String(physical[fact]);
    case 'voltage':
      return voltageText(physical.voltage);
    case 'connector':
      return physical.connector;
    case 'perBreaker':
      return physical.perBreaker
        .map(({ breaker, most }) => `${breaker}: ${most}`)
        .sort()
        .join(', ');
    case 'switches':
      return settings.switches ?? '';
    case 'onLoss':
      return settings.onLoss;
    case 'laser':
      return hazards.laser ?? '';
    default:
      return hazards[fact] ? 'yes' : '';
  }
}

function voltageText(voltage: FixtureType['physical']['voltage']): string {
  if (voltage === null) return '';
  return voltage.low === voltage.high ? String(voltage.low) : `${voltage.low}–${voltage.high}`;
}

function changedFacts(before: FixtureType, after: FixtureType): FactChange[] {
  const left = typeFacts(before);
  const right = typeFacts(after);
  return FACT_FIELDS.map((fact) => ({ fact, before: left.get(fact) ?? '', after: right.get(fact) ?? '' })).filter(
    (change) => change.before !== change.after,
  );
}

interface Pair {
  readonly left: TypeMode | undefined;
  readonly right: TypeMode | undefined;
}

/** Modes by name, the first of a name with the first; those of the left in their order, then what only the right has. */
function pairs(left: readonly TypeMode[], right: readonly TypeMode[]): readonly Pair[] {
  const rest = new Map<string, TypeMode[]>();
  for (const mode of right) rest.set(mode.name, [...(rest.get(mode.name) ?? []), mode]);
  const both = left.map((mode) => ({ left: mode, right: rest.get(mode.name)?.shift() }));
  const over = new Set([...rest.values()].flat());
  return [...both, ...right.filter((mode) => over.has(mode)).map((mode) => ({ left: undefined, right: mode }))];
}

type Side = readonly [FixtureType, TypeMode];

function changesOfMode(before: Side, after: Side): ModeChange[] {
  const [, left] = before;
  const [, right] = after;
  const change: ModeChange = {
    mode: right.name,
    description: textChange(left.description, right.description),
    firmware: textChange(firmwareText(left), firmwareText(right)),
    slots: changedSlots(modeChart(...before), modeChart(...after)),
  };
  return change.description === null && change.firmware === null && change.slots.length === 0 ? [] : [change];
}

const textChange = (before: string, after: string): TextChange | null => (before === after ? null : { before, after });

const firmwareText = (mode: TypeMode) => [...mode.firmware].sort().join(', ');

function changedSlots(before: ModeChart, after: ModeChart): SlotChange[] {
  const breaks = new Set([...before.breaks, ...after.breaks].map((each) => each.break));
  return [...breaks]
    .sort((a, b) => a - b)
    .flatMap((number) => {
      const left = slotsOfBreak(before, number);
      const right = slotsOfBreak(after, number);
      return Array.from({ length: Math.max(left.length, right.length) }, (_, at) => ({
        break: number,
        slot: at + 1,
        before: left[at]?.uses ?? null,
        after: right[at]?.uses ?? null,
      })).filter((change) => usesText(change.before) !== usesText(change.after));
    });
}

const slotsOfBreak = ({ breaks }: ModeChart, number: number) =>
  breaks.find((each) => each.break === number)?.slots ?? [];

/** Sorted: the order of channels, which share a slot, says nothing. */
const usesText = (uses: readonly ChartUse[] | null): string =>
  uses === null
    ? ''
    : `[${uses
        .map((use) => JSON.stringify(use))
        .sort()
        .join(',')}]`;
