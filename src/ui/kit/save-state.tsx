import type { Severity } from '#engine/model/finding.ts';
import { SAVE_WORDS } from '#words/screens.ts';
import { joinClasses } from './join-classes.ts';

type Saving = keyof typeof SAVE_WORDS;

const EDGES: Readonly<Record<Saving, Severity | undefined>> = {
  opening: undefined,
  saved: undefined,
  saving: undefined,
  'on-device': 'caution',
  'read-only': 'note',
  refused: 'blocker',
};

const CLASSES = {
  blocker: 'border-blocker text-blocker',
  caution: 'border-caution text-caution',
  note: 'border-note text-note',
} as const;

export interface SaveStateProps {
  readonly state: Saving;
  /** What more there is to say: how many edits wait, why it was refused. */
  readonly detail?: string | undefined;
}

/** Where the edits of this screen stand, in words; changes are announced politely. */
export function SaveState({ state, detail }: SaveStateProps) {
  const edge = EDGES[state];
  return (
    <span
      role="status"
      className={joinClasses(
        'inline-flex items-center gap-1 rounded-control border px-2 py-0.5',
        edge === undefined ? 'border-rule-strong text-soft' : CLASSES[edge],
      )}
    >
      {SAVE_WORDS[state]}
      {detail === undefined ? null : <span>· {detail}</span>}
    </span>
  );
}
