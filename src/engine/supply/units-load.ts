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

/**
 * How many units the manual allows on a breaker; null where it speaks of another breaker, or where its words are no number. Breakers
 * are told by what is written on them: `B16`, `c 20 A`. [SU10]
 */
export function allowedOn(breaker: string, limit: Pick<BreakerLimit, 'breaker' | 'most'>): number | null {
  if (limit.breaker.trim() !== '' && breakerKey(limit.breaker) !== breakerKey(breaker)) return null;
  const [, most] = /^\s*(\d{1,4})(?!\d|[.,]\d)/.exec(limit.most) ?? [];
  return most === undefined ? null : Number(most);
}

const breakerKey = (text: string) =>
  foldName(text)
    .replace(/[\s-]+/g, '')
    .replace(/(\d)a$/, '$1');
