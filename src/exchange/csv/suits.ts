import type { Meaning } from '#engine/list/meaning.ts';
import type { ColumnFacts } from './column-facts.ts';

/**
 * How well a column's cells suit a meaning: about 1 when they do, little when they cannot mean it. An empty column suits
 * any, and so does any column a meaning of free text.
 */
export function suits(meaning: Meaning, facts: ColumnFacts | undefined): number {
  if (facts === undefined || facts.count === 0) return 1;
  return SUITS[meaning]?.(facts) ?? 1;
}

const FEW = 5;

const words = (facts: ColumnFacts) => (facts.worded < 0.2 ? 0.35 : 1);
const numbers = (facts: ColumnFacts) => Math.max(0.15, facts.whole);

const SUITS: Partial<Record<Meaning, (facts: ColumnFacts) => number>> = {
  // Channels hardly repeat, footprints do: that is what tells `Channels` from `Channels`.
  channel: (facts) =>
    facts.counted < 0.4 ? 0.2 : facts.counted * (facts.count < FEW ? 1 : 0.4 + 0.6 * facts.distinct),
  footprint: (facts) =>
    facts.footprints < 0.4 ? 0.1 : facts.footprints * (facts.count < FEW || facts.distinct <= 0.6 ? 1 : 0.4),
  // Units count up along a position; a number that stays the same from row to row is something else.
  unit: (facts) => (facts.length > 10 ? 0.2 : facts.count < FEW || facts.changes > 0.4 ? 1.02 : 0.6),
  universe: (facts) => (facts.pairs > 0.5 ? 0.2 : Math.max(0.3, facts.whole)),
  slot: numbers,
  absolute: numbers,
  address: (facts) => Math.max(0.15, facts.pairs * 1.1, facts.counted * 1.05),
  quantity: (facts) => (facts.quantities < 0.4 ? 0.2 : facts.quantities),
  type: words,
  position: words,
  purpose: words,
};
