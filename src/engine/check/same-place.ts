import type { Unit } from '../address/unit.ts';
import type { Finding } from '../model/finding.ts';
import type { Fixture } from '../model/fixture.ts';
import { foldName, SEPARATOR } from '../model/ids.ts';
import { makeFinding } from './make-finding.ts';

/** Where a fixture hangs, as places are compared; undefined without a position or a unit number. */
export function placeKeyOf(fixture: Fixture): string | undefined {
  if (fixture.position === '' || fixture.unit === '') return undefined;
  const position = foldName(fixture.position);
  const unit = foldName(fixture.unit);
  return position === '' || unit === '' ? undefined : position + SEPARATOR + unit;
}

/** Two or more fixtures with one position and unit number; `units` share a place key. [CH10] */
export function samePlace(units: readonly Unit[]): Finding {
  const { position, unit } = units.reduce((a, b) => (a.fixture.id < b.fixture.id ? a : b)).fixture;
  return makeFinding(
    { rule: 'same-place', position, unit },
    units.map((each) => each.fixture.id),
  );
}
