import { getRow } from '#base/table.ts';
import type { Finding } from '../model/finding.ts';
import type { FixtureId } from '../model/ids.ts';
import { recordOf } from '../model/record.ts';
import type { Rig } from '../model/rig.ts';
import { makeFinding } from './make-finding.ts';
import type { CheckStep, PartChecker } from './part-checker.ts';
import { type OpenDelta, StandingFindings } from './standing-findings.ts';

/** Units with an open fault. [UK1] */
export class UpkeepChecker implements PartChecker {
  readonly #standing = new StandingFindings<'faults'>();

  update({ next, replanted, changes }: CheckStep, delta: OpenDelta): void {
    // What cells a unit has does not matter, only whether it is there.
    const came = changes.some(({ before, after }) => before === undefined || after === undefined);
    if (came || replanted.has('fault')) this.#standing.settle('faults', faultFindings(next), delta);
  }
}

/** One for each fault and unit; faults that say the same of one unit are said once. */
function faultFindings(rig: Rig): readonly Finding[] {
  const found = recordOf(rig.cards)
    .faults.filter(({ state, unit }) => state === 'open' && getRow(rig.fixtures, unit) !== undefined)
    .map(({ unit, what, seenBy, seenOn }) =>
      makeFinding({ rule: 'fault-open', what, seenBy, seenOn }, [unit as FixtureId]),
    );
  return [...new Map(found.map((finding) => [finding.key, finding] as const)).values()];
}
