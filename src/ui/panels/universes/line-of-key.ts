export interface Lines {
  readonly at: number;
  readonly count: number;
  /** How many the window shows. */
  readonly page: number;
}

/** The line that a key goes to; undefined for a key that goes nowhere. */
export function lineOfKey(key: string, { at, count, page }: Lines): number | undefined {
  const last = count - 1;
  const to: Readonly<Record<string, number>> = {
    ArrowDown: at + 1,
    ArrowUp: at - 1,
    PageDown: at + Math.max(1, page - 1),
    PageUp: at - Math.max(1, page - 1),
    Home: 0,
    End: last,
  };
  const line = to[key];
  return line === undefined || last < 0 ? undefined : Math.max(0, Math.min(last, line));
}
