import type { Part } from '../model/fixture-type.ts';

/** The names of the parts that can be reached from some: themselves, what is within them, and what their copies are of. */
export function reachedParts(parts: readonly Part[], from: Iterable<string>): ReadonlySet<string> {
  const inner = new Map<string, string[]>();
  const link = (name: string, to: string) => {
    const known = inner.get(name);
    if (known === undefined) inner.set(name, [to]);
    else known.push(to);
  };
  for (const part of parts) {
    if (part.within !== null) link(part.within, part.name);
    if (part.copy !== null) link(part.name, part.copy.of);
  }
  const reached = new Set<string>();
  const next = [...from];
  for (let name = next.pop(); name !== undefined; name = next.pop()) {
    if (reached.has(name)) continue;
    reached.add(name);
    next.push(...(inner.get(name) ?? []));
  }
  return reached;
}
