import { foldName } from '../model/ids.ts';
import type { Draft, DraftEdit, DraftMode } from './draft.ts';
import { modeOf } from './draft-plans.ts';
import { newRepeatEdits, newRowEdits } from './new-row.ts';
import { removeModeEdits } from './removed-edits.ts';

/** Adds an empty mode below all others. The first edit names its id. */
export function addMode(draft: Draft, name: string, ids: () => string): DraftEdit[] {
  const order = Math.max(0, ...draft.modes.map((mode) => mode.order)) + 1;
  return modeEdits({ ...EMPTY, id: ids(), order, name });
}

/** Adds a copy of a mode, below it, with new ids throughout: `X copy`. The first edit names its id. */
export function copyMode(draft: Draft, modeId: string, ids: () => string): DraftEdit[] {
  const mode = modeOf(draft, modeId);
  if (mode === undefined) return [];
  const id = ids();
  const repeats = new Map(mode.repeats.map((repeat) => [repeat.id, { ...repeat, id: ids() }]));
  return [
    ...modeEdits({ ...mode, id, order: orderBelow(draft, mode), name: copyName(draft, mode.name) }),
    ...[...repeats.values()].flatMap((repeat) => newRepeatEdits(id, repeat)),
    ...mode.rows.flatMap((row) => newRowEdits(id, { ...row, id: ids(), repeat: repeats.get(row.repeat)?.id ?? '' })),
  ];
}

/** Takes a mode out with all that is in it. */
export function removeMode(draft: Draft, modeId: string): DraftEdit[] {
  const mode = modeOf(draft, modeId);
  return mode === undefined ? [] : removeModeEdits(mode);
}

type ModeCells = Omit<DraftMode, 'rows' | 'repeats'>;

const EMPTY = { description: '', firmware: '', kept: '' } as const;

function modeEdits(mode: ModeCells): DraftEdit[] {
  return [
    { of: 'mode', mode: mode.id, field: 'order', value: mode.order },
    ...(['name', 'description', 'firmware', 'kept'] as const).flatMap((field): DraftEdit[] =>
      mode[field] === '' ? [] : [{ of: 'mode', mode: mode.id, field, value: mode[field] }],
    ),
  ];
}

function orderBelow({ modes }: Draft, mode: DraftMode): number {
  const next = modes.find((each) => each.order > mode.order);
  return next === undefined ? mode.order + 1 : (mode.order + next.order) / 2;
}

function copyName({ modes }: Draft, name: string): string {
  const taken = new Set(modes.map((mode) => foldName(mode.name)));
  const names = Array.from({ length: modes.length + 1 }, (_, at) => `${name} copy${at === 0 ? '' : ` ${at + 1}`}`);
  return names.find((each) => !taken.has(foldName(each))) ?? name;
}
