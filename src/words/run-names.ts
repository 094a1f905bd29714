import type { NamedSource } from '#engine/model/named-source.ts';
import type { Reach } from '#engine/network/runs/measured-run.ts';
import type { RunStanding } from '#engine/sheet/sheet.ts';
import { listed } from './listed.ts';

/** `node “Dock”, port 2`: where a run begins, in a sentence and in a list. */
export function sourceWords(from: NamedSource): string {
  switch (from.kind) {
    case 'none':
      return 'not said';
    case 'port':
      return from.node === null ? 'a node that is gone' : `node “${from.node}”, port ${from.index}`;
    case 'splitter':
      return from.splitter === null ? 'a splitter that is gone' : `splitter “${from.splitter}”, output ${from.output}`;
    case 'cable':
      return `the desk, universe ${from.universe}`;
  }
}

/** How what is on a run is said on paper. */
export const RUN_STANDING: RunStanding = {
  source: sourceWords,
  unit: 'unit',
  splitter: (name) => `splitter ${name}`,
};

/** Who says how long a line may be, in a sentence. */
export const REACH_WORDS: Readonly<Record<Reach['by'], string>> = {
  run: 'it is said to stand',
  rig: 'a run of this rig may have',
  practice: 'are usual on 24 AWG (common practice)',
};

const metresWords = (metres: number) => `${metres.toLocaleString('en-GB', { maximumFractionDigits: 2 })} m`;

/** `24 m`, `at least 24 m`, or that nothing is known of it. */
export function lengthWords({ metres, unknown }: { readonly metres: number; readonly unknown: number }): string {
  if (unknown === 0) return metresWords(metres);
  return metres === 0 ? 'length not known' : `at least ${metresWords(metres)}`;
}

/** `universe 3`, `universes 3 and 4`. */
export const universesWords = (universes: readonly number[]): string =>
  `${universes.length === 1 ? 'universe' : 'universes'} ${listed(universes)}`;
