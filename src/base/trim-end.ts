/** The text without the given characters at its end. One look at each: a pattern would look at every run of them again. */
export function trimEnd(text: string, characters: string): string {
  let end = text.length;
  while (end > 0 && characters.includes(text.charAt(end - 1))) end -= 1;
  return text.slice(0, end);
}
