import type { Fixture } from '../model/fixture.ts';
import { foldName } from '../model/ids.ts';
import { compareNatural } from '../model/natural-order.ts';
import { exactSum, factorOf, type ModedUnit, physicalOf, powerOf, suits } from './stated.ts';

/** What units on one circuit draw together, as far as their types state it. The order of units plays no part in its figures. */
export interface UnitsLoad {
  /** Of the units whose power is known. */
  readonly watts: number;
  /** Apparent power: watts by power factor. Unlike factors are added up, which is never too little. */
  readonly voltAmps: number;
  readonly amps: number;
  /** Units whose type does not state its power, or is not known: they are in no figure. */
  readonly unknown: readonly Fixture[];
  /** Units whose type states its power but no power factor: reckoned with 1, so that the amps are the least there are. */
  readonly factorless: readonly Fixture[];
  /** Units whose type states a voltage that the circuit's is not within. */
  readonly unsuited: readonly Fixture[];
  /** What the types' manuals allow on one breaker, for each type that says it. */
  readonly limits: readonly BreakerLimit[];
}

/** What the manual of a type allows on one breaker, in its own words. */
export interface BreakerLimit {
  readonly type: string;
  /** Units of that type on the circuit. */
  readonly units: readonly Fixture[];
  readonly breaker: string;
  readonly most: string;
}

/** What units draw at a voltage. [SU6] */
export function unitsLoad(units: Iterable<ModedUnit>, volts: number): UnitsLoad {
  const watts: number[] = [];
  const voltAmps: number[] = [];
  const unknown: Fixture[] = [];
  const factorless: Fixture[] = [];
  const unsuited: Fixture[] = [];
  const listed = [...units];
  for (const unit of listed) {
    const physical = physicalOf(unit);
    const power = powerOf(physical);
    const factor = factorOf(physical);
    if (!suits(physical, volts)) unsuited.push(unit.fixture);
    if (power === null) unknown.push(unit.fixture);
    else {
      if (factor === null) factorless.push(unit.fixture);
      watts.push(power);
      voltAmps.push(power / (factor ?? 1));
    }
  }
  const apparent = exactSum(voltAmps);
  const limits = limitsOf(listed);
  return { watts: exactSum(watts), voltAmps: apparent, amps: apparent / volts, unknown, factorless, unsuited, limits };
}

/** Units whose manuals say the same of one type, whichever revision their modes were copied from. */
function limitsOf(units: readonly ModedUnit[]): readonly BreakerLimit[] {
  const types = new Map<string, BreakerLimit & { readonly units: Fixture[] }>();
  for (const unit of units) {
    const stated = new Set(physicalOf(unit)?.perBreaker.map(({ breaker, most }) => JSON.stringify([breaker, most])));
    for (const limit of stated) {
      const key = foldName(unit.fixture.type) + limit;
      const known = types.get(key);
      if (known !== undefined) known.units.push(unit.fixture);
      else {
        const [breaker, most] = JSON.parse(limit) as [string, string];
        types.set(key, { type: '', units: [unit.fixture], breaker, most });
      }
    }
  }
  return [...types]
    .sort(([a], [b]) => compareNatural(a, b))
    .map(([, limit]) => ({ ...limit, type: firstName(limit.units.map(({ type }) => type)) }));
}

/** Of several ways to write a name the first, whatever the order of rows. */
export const firstName = (names: readonly string[]): string =>
  names.map((name) => name.trim()).reduce((a, b) => (compareNatural(b, a) < 0 ? b : a), names[0]?.trim() ?? '');

/** The breaker of a circuit, and what it is at. */
export interface BreakerOf {
  /** What is written on it: `C16`. */
  readonly breaker: string;
  readonly rating: number | null;
  readonly volts: number;
}

/** Whether a manual's words are of the breaker of a circuit, or of another; unclear where too little is said of either. [SU10] */
export function speaksOf(limit: Pick<BreakerLimit, 'breaker'>, circuit: BreakerOf): 'this' | 'another' | 'unclear' {
  const said = limit.breaker.trim();
  if (said === '') return 'this';
  const wanted = readBreaker(said);
  const has = readBreaker(circuit.breaker);
  const amps = has.amps ?? circuit.rating;
  if (wanted.volts !== null && Math.abs(wanted.volts / circuit.volts - 1) > NEAR) return 'another';
  if (wanted.amps !== null && amps !== null && wanted.amps !== amps) return 'another';
  if (wanted.curve !== '' && has.curve !== '' && wanted.curve !== has.curve) return 'another';
  const isKnown = wanted.amps !== null && amps !== null && (wanted.curve === '' || has.curve !== '');
  return isKnown || foldName(said) === foldName(circuit.breaker) ? 'this' : 'unclear';
}

/** How many units a manual allows, where its words begin with a number: `3`, `8 units`; null else. [SU10] */
export function allowedBy({ most }: Pick<BreakerLimit, 'most'>): number | null {
  const [, number] = /^\s*(\d{1,4})(?!\d|[.,]\d)/.exec(most) ?? [];
  return number === undefined ? null : Number(number);
}

/** Nominal voltages that are called the same: 220, 230 and 240 V. */
const NEAR = 0.1;

/** `C16`, `16 A, 230 V, type C`, `b 20 A`: the letter of its curve (IEC 60898-1, from memory), amps and volts, so far as they are said. */
function readBreaker(text: string) {
  const [, curve = '', rated] =
    /(?:^|[^a-z])([bcdkz])?[\s-]*(\d{1,3})\s*(?:a(?:mps?)?)?(?![\d.,]*\s*v)(?![a-z\d])/i.exec(text) ?? [];
  const [, type = ''] = /\btype\s*([bcdkz])\b/i.exec(text) ?? [];
  const [, volts] = /(\d{2,3})\s*v(?![a-z])/i.exec(text) ?? [];
  return {
    curve: (type || curve).toLowerCase(),
    amps: rated === undefined ? null : Number(rated),
    volts: volts === undefined ? null : Number(volts),
  };
}
