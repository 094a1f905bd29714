/**
 * Compares names the way people number things: runs of digits by value, the rest as folded text, so that units read
 * 2, 4, 4A, 10. A total order: equal only for equal text. Source: common practice.
 */
export function compareNatural(a: string, b: string): number {
  let i = 0;
  let j = 0;
  while (i < a.length && j < b.length) {
    const left = a.charCodeAt(i);
    const right = b.charCodeAt(j);
    if (isDigit(left) && isDigit(right)) {
      const endA = endOfDigits(a, i);
      const endB = endOfDigits(b, j);
      const byValue = compareDigits(a, i, endA, b, j, endB);
      if (byValue !== 0) return byValue;
      i = endA;
      j = endB;
    } else {
      if (left !== right) {
        const byText = compareText(a.charAt(i).toLowerCase(), b.charAt(j).toLowerCase());
        if (byText !== 0) return byText;
      }
      i += 1;
      j += 1;
    }
  }
  return a.length - i - (b.length - j) || compareText(a, b);
}

const isDigit = (code: number) => code >= 48 && code <= 57;

function endOfDigits(text: string, from: number): number {
  let end = from;
  while (end < text.length && isDigit(text.charCodeAt(end))) end += 1;
  return end;
}

function compareDigits(a: string, i: number, endA: number, b: string, j: number, endB: number): number {
  let from = i;
  let other = j;
  while (from < endA - 1 && a.charCodeAt(from) === 48) from += 1;
  while (other < endB - 1 && b.charCodeAt(other) === 48) other += 1;
  const byLength = endA - from - (endB - other);
  return byLength !== 0 ? byLength : compareText(a.slice(from, endA), b.slice(other, endB));
}

const compareText = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);
