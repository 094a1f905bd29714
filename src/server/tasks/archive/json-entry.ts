import type { PackedEntry } from '../../archive/pack.ts';

/** A part of an archive that is JSON: two spaces deep, so that a person can read it as well. */
export const jsonEntry = (name: string, value: unknown): PackedEntry => textEntry(name, JSON.stringify(value, null, 2));

export const textEntry = (name: string, text: string): PackedEntry => ({
  name,
  bytes: new TextEncoder().encode(text),
});
