import { present } from '#base/assert.ts';
import { foldName } from '../model/ids.ts';
import type { Draft, DraftMode } from './draft.ts';
import type { DraftTrouble } from './draft-trouble.ts';
import type { DraftedMode } from './drafted-mode.ts';

/** What is wrong with the modes of a draft, mode by mode; `modes` are what its modes amount to. */
export function troublesOfModes(draft: Draft, modes: readonly DraftedMode[]): readonly DraftTrouble[] {
  const where = { of: 'type' } as const;
  if (modes.length === 0) return [{ where, kind: 'no-mode' }];
  const first = new Map<string, string>();
  const all = draft.modes.flatMap((mode, at) => {
    const { troubles } = present(modes[at], `no mode ${at}`);
    return [...nameTroubles(mode, first), ...troubles];
  });
  return modes.some((mode) => mode.isUsable) ? all : [{ where, kind: 'no-usable-mode' }, ...all];
}

/** `first` keeps which mode has had each name first. */
function nameTroubles({ id, name }: DraftMode, first: Map<string, string>): DraftTrouble[] {
  const where = { of: 'mode', mode: id } as const;
  const folded = foldName(name);
  if (folded === '') return [{ where, kind: 'mode-unnamed' }];
  if (first.has(folded)) return [{ where, kind: 'mode-named-twice' }];
  first.set(folded, id);
  return [];
}
