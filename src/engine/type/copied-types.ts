import { rowsOf } from '#base/table.ts';
import type { Rig } from '../model/rig.ts';

/** The library's types that a rig has copies of, each once, sorted by id. */
export function copiedTypes({ modes }: Pick<Rig, 'modes'>): readonly string[] {
  const ids = new Set<string>();
  for (const { pin } of rowsOf(modes)) if (pin !== null) ids.add(pin.typeId);
  return [...ids].sort();
}

/** Whether a rig has a copy of any type. */
export function hasCopies({ modes }: Pick<Rig, 'modes'>): boolean {
  for (const { pin } of rowsOf(modes)) if (pin !== null) return true;
  return false;
}
