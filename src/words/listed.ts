/** `Beam`, `Beam and Deck`, `Beam, Truss and Deck`. */
export const listed = (names: readonly (string | number)[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;

/** Ascending numbers as the stretches in which they follow each other, each by its first and its last. */
export function stretchesOf(numbers: readonly number[]): readonly (readonly [first: number, last: number])[] {
  const stretches: [number, number][] = [];
  for (const number of numbers) {
    const before = stretches.at(-1);
    if (before !== undefined && before[1] === number - 1) before[1] = number;
    else stretches.push([number, number]);
  }
  return stretches;
}
