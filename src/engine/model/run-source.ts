import type { Universe } from './address.ts';
import { portKey } from './card.ts';

/** Where a data line begins. `cable`: at the desk itself, which sends a universe there. */
export type RunSource =
  | { readonly kind: 'none' }
  | { readonly kind: 'port'; readonly port: string }
  | { readonly kind: 'splitter'; readonly splitter: string; readonly output: number }
  | { readonly kind: 'cable'; readonly universe: Universe };

const NO_SOURCE: RunSource = Object.freeze({ kind: 'none' });

/** Where a run begins, as its cell has it; the inverse of `spellSource`. What is no source is none. */
export function parseSource(cell: string): RunSource {
  const [kind, at = ''] = cell.split(/ (.*)/s);
  const output = /^(.+)\.([1-9]\d?)$/s.exec(at);
  if (kind === 'port' && output !== null) return { kind, port: at };
  if (kind === 'splitter' && output !== null) {
    return { kind, splitter: output[1] ?? '', output: Number(output[2]) };
  }
  const universe = Number(at);
  if (kind === 'cable' && /^[1-9]\d{0,4}$/.test(at) && universe <= 63_999)
    return { kind, universe: universe as Universe };
  return NO_SOURCE;
}

/** Where a run begins, as its cell keeps it: `port NODE.1`, `splitter ID.2`, `cable 3`; empty for nowhere. */
export function spellSource(source: RunSource): string {
  switch (source.kind) {
    case 'none':
      return '';
    case 'port':
      return `port ${source.port}`;
    case 'splitter':
      return `splitter ${portKey(source.splitter, source.output)}`;
    case 'cable':
      return `cable ${source.universe}`;
  }
}
