import { oneLine } from './cell-text.ts';

/** A row takes four slots at most: a value has up to 32 bit (GDTF, DMXChannel Offset). */
const SLOT_LIMIT = 4;

/**
 * The slots a row names, coarse first: `5`, `5-6`, `5,9`, `5/6`, `5 6`. None for an empty text, a virtual channel; undefined
 * for what names no one to four slots.
 */
export function readSlots(text: string): readonly number[] | undefined {
  const words = oneLine(text)
    .replace(/\s*(?:[-–—]|\.\.+|…)\s*/gu, '-')
    .split(/[\s,;/+&]+/u)
    .filter((word) => word !== '');
  const slots: number[] = [];
  for (const word of words) {
    const [, first, last] = /^(\d{1,4})(?:-(\d{1,4}))?$/.exec(word) ?? [];
    if (first === undefined || Number(first) < 1) return undefined;
    const from = Number(first);
    const to = last === undefined ? from : Number(last);
    if (to < from || to - from >= SLOT_LIMIT) return undefined;
    for (let slot = from; slot <= to; slot++) slots.push(slot);
  }
  return slots.length > SLOT_LIMIT ? undefined : slots;
}

/** Slots as `readSlots` reads them: `5`, `5-6` where they follow each other, else `5, 9`. */
export function slotsText(slots: readonly number[]): string {
  const [first] = slots;
  const isRun = slots.length > 1 && slots.every((slot, at) => slot === (first ?? 0) + at);
  return isRun ? `${first}-${slots.at(-1)}` : slots.join(', ');
}
