import type { RawValue } from './blocks.ts';
import type { Stretch } from './read-value.ts';

const NEXT =
  /(?:^|[\s,;|/]{1,3})(\d{1,5})\s?(?:\.{2,3}|…|[-‐‑‒–—−~]|to |bis |à )\s?(\d{1,5})(?=[\s:,;=]|$)[\s:=]{0,3}/g;

/** Values that go on within one line: `0-10 Closed, 11-255 Strobe`. Only a stretch right behind the one before counts. */
export function chained(first: Stretch, text: string): RawValue[] {
  const values: RawValue[] = [];
  let current: Stretch = first;
  let from = 0;
  for (const match of text.matchAll(NEXT)) {
    const [low, high] = [Number(match[1]), Number(match[2])];
    if (low !== current.to + 1 || high < low || current.percent) continue;
    values.push({ ...current, text: text.slice(from, match.index).trim() });
    current = { from: low, to: high, percent: false };
    from = match.index + match[0].length;
  }
  return [...values, { ...current, text: text.slice(from).trim() }];
}
