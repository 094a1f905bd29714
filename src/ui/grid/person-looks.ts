const OUTLINES = [
  'outline-person-1',
  'outline-person-2',
  'outline-person-3',
  'outline-person-4',
  'outline-person-5',
  'outline-person-6',
  'outline-person-7',
  'outline-person-8',
] as const;

const GROUNDS = [
  'bg-person-1',
  'bg-person-2',
  'bg-person-3',
  'bg-person-4',
  'bg-person-5',
  'bg-person-6',
  'bg-person-7',
  'bg-person-8',
] as const;

/** How a person of a colour number is shown: the colours come round again, the name beside them does not. */
export function personLook(colour: number): { readonly outline: string; readonly ground: string } {
  const n = Math.abs(Math.trunc(colour)) % OUTLINES.length;
  return { outline: OUTLINES[n] ?? OUTLINES[0], ground: GROUNDS[n] ?? GROUNDS[0] };
}
