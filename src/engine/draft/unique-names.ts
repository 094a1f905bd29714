/** Gives each name once: `Cell`, then `Cell 2`, `Cell 3`. */
export function createUniqueNames(taken: Iterable<string>): (wanted: string) => string {
  const used = new Set(taken);
  const next = new Map<string, number>();
  return (wanted) => {
    let name = wanted;
    let number = next.get(wanted) ?? 2;
    while (used.has(name)) {
      name = `${wanted} ${number}`;
      number += 1;
    }
    next.set(wanted, number);
    used.add(name);
    return name;
  };
}
