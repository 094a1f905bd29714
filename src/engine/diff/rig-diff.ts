import { differingRows, type RowDifference } from '#base/table.ts';
import type { Card } from '../model/card.ts';
import type { Fixture } from '../model/fixture.ts';
import type { Mode, Note, Position, Rig, Signature, UniverseLabel, WantedFirmware } from '../model/rig.ts';
import { sameFixture } from './same-fixture.ts';
import { sameCard, sameMode, sameNote, samePosition, sameSignature, sameUniverse, sameWanted } from './same-row.ts';

/** All that is unlike in two rigs, row by row: `before` is missing where a row was added, `after` where it is gone. */
export interface RigDiff {
  readonly fixtures: readonly RowDifference<Fixture>[];
  readonly modes: readonly RowDifference<Mode>[];
  readonly positions: readonly RowDifference<Position>[];
  readonly universes: readonly RowDifference<UniverseLabel>[];
  readonly notes: readonly RowDifference<Note>[];
  readonly wanted: readonly RowDifference<WantedFirmware>[];
  readonly signatures: readonly RowDifference<Signature>[];
  readonly cards: readonly RowDifference<Card>[];
}

/**
 * What is unlike in two rigs, by what their rows say: it does not matter whether they share any object. Units are told apart by
 * their ids. Parts that are shared are not looked at. [DF1]
 */
export function diffRigs(before: Rig, after: Rig): RigDiff {
  return {
    fixtures: differingRows(before.fixtures, after.fixtures, sameFixture),
    modes: differingRows(before.modes, after.modes, sameMode),
    positions: differingRows(before.positions, after.positions, samePosition),
    universes: differingRows(before.universes, after.universes, sameUniverse),
    notes: differingRows(before.notes, after.notes, sameNote),
    wanted: differingRows(before.wanted, after.wanted, sameWanted),
    signatures: differingRows(before.signatures, after.signatures, sameSignature),
    cards: differingRows(before.cards, after.cards, sameCard),
  };
}

/** The way back. [DF3] */
export const reverseDiff = (diff: RigDiff): RigDiff => ({
  fixtures: diff.fixtures.map(reverseRow),
  modes: diff.modes.map(reverseRow),
  positions: diff.positions.map(reverseRow),
  universes: diff.universes.map(reverseRow),
  notes: diff.notes.map(reverseRow),
  wanted: diff.wanted.map(reverseRow),
  signatures: diff.signatures.map(reverseRow),
  cards: diff.cards.map(reverseRow),
});

const reverseRow = <Row>({ id, before, after }: RowDifference<Row>): RowDifference<Row> => ({
  id,
  before: after,
  after: before,
});
