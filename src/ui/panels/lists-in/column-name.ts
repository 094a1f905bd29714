/** The name a spreadsheet gives a column: 0 is A, 25 is Z, 26 is AA. Source: common practice. */
export function columnName(column: number): string {
  const letter = String.fromCharCode(65 + (column % 26));
  return column < 26 ? letter : columnName(Math.floor(column / 26) - 1) + letter;
}
