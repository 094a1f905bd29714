/** A figure to so many digits behind the point, as a number: adding up leaves crumbs that nobody wants to read. */
export function rounded(value: number, digits: number): number {
  const scale = 10 ** digits;
  return Math.round(value * scale) / scale;
}
