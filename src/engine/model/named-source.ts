import type { Universe } from './address.ts';
import type { Plant } from './plant.ts';
import type { RunSource } from './run-source.ts';

/** Where a run begins, by the names people know; a name is null where what it names is gone. */
export type NamedSource =
  | { readonly kind: 'none' }
  | { readonly kind: 'port'; readonly node: string | null; readonly index: number }
  | { readonly kind: 'splitter'; readonly splitter: string | null; readonly output: number }
  | { readonly kind: 'cable'; readonly universe: Universe };

export function namedSource(plant: Plant, from: RunSource): NamedSource {
  switch (from.kind) {
    case 'none':
    case 'cable':
      return from;
    case 'port': {
      const { node, index } = portOf(from.port);
      return { kind: 'port', node: plant.nodes.find(({ id }) => id === node)?.name ?? null, index };
    }
    case 'splitter': {
      const { splitter, output } = from;
      return { kind: 'splitter', splitter: plant.splitters.find(({ id }) => id === splitter)?.name ?? null, output };
    }
  }
}

/** What is wrong with where a run begins: it is gone, or what is there has no such output; null for neither. [RN8] */
export function sourceTrouble(plant: Plant, from: RunSource): 'gone' | 'beyond' | null {
  if (from.kind === 'port') {
    const { node, index } = portOf(from.port);
    const found = plant.nodes.find(({ id }) => id === node);
    if (found === undefined) return 'gone';
    return found.ports > 0 && index > found.ports ? 'beyond' : null;
  }
  if (from.kind !== 'splitter') return null;
  const found = plant.splitters.find(({ id }) => id === from.splitter);
  if (found === undefined) return 'gone';
  return from.output > found.outputs ? 'beyond' : null;
}

function portOf(key: string): { readonly node: string; readonly index: number } {
  const dot = key.lastIndexOf('.');
  return { node: key.slice(0, dot), index: Number(key.slice(dot + 1)) };
}
