/**
 * The fewest bins of `capacity` for a few widths, by trying every way that can still be better: a second opinion on packing
 * that shares no code with it. Gives up, undefined, after so many placings.
 */
export function fewestBins(widths: readonly number[], capacity: number, placings = 2_000_000): number | undefined {
  const sorted = [...widths].sort((a, b) => b - a);
  const rest = sorted.map((_, at) => sorted.slice(at).reduce((total, width) => total + width, 0));
  const left: number[] = [];
  let best = sorted.length;
  let tries = 0;
  const place = (at: number, before: number): void => {
    tries += 1;
    if (tries > placings) return;
    const width = sorted[at];
    if (width === undefined) {
      best = Math.min(best, left.length);
      return;
    }
    const room = left.reduce((total, free) => total + free, 0);
    if (left.length + Math.max(0, Math.ceil(((rest[at] ?? 0) - room) / capacity)) >= best) return;
    // Bins with the same room left are the same; so are widths alike, which go in from left to right; a bin it fills it may as well take.
    const first = width === sorted[at - 1] ? before : 0;
    const tried = new Set<number>();
    for (let bin = first; bin < left.length; bin++) {
      const free = left[bin] as number;
      if (free < width || tried.has(free)) continue;
      tried.add(free);
      left[bin] = free - width;
      place(at + 1, bin);
      left[bin] = free;
      if (free === width) return;
    }
    left.push(capacity - width);
    place(at + 1, left.length - 1);
    left.pop();
  };
  place(0, 0);
  return tries > placings ? undefined : best;
}
