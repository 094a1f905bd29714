import { makeFinding } from './make-finding.ts';
import type { CheckStep, PartChecker } from './part-checker.ts';
import { type OpenDelta, StandingFindings } from './standing-findings.ts';

/** Cells of cards that cannot be read. [CH24] */
export class CardReadingChecker implements PartChecker {
  readonly #standing = new StandingFindings<'cards'>();

  update({ plant, replanted }: CheckStep, delta: OpenDelta): void {
    if (replanted.size === 0) return;
    const found = plant.unreadable.map(({ card, of, field, value }) =>
      makeFinding({ rule: 'card-unreadable', card, of, field, value }, []),
    );
    this.#standing.settle('cards', found, delta);
  }
}
