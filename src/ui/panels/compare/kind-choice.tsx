import type { RigTaskKind, UnitTaskKind } from '#engine/diff/tasks.ts';
import { taskTitle, COMPARE_RIGS_WORDS as words } from '#words/compare.ts';
import { Button } from '../../kit/button.tsx';
import { BareSelect } from '../../kit/select.tsx';

export type TaskKind = UnitTaskKind | RigTaskKind;

export interface KindChoiceProps {
  /** How many there are of each kind, in the order in which they are named. */
  readonly counts: ReadonlyMap<TaskKind, number>;
  readonly chosen: TaskKind | undefined;
  readonly onChoose: (kind: TaskKind | undefined) => void;
}

/** How many changes there are of each kind; choosing one leaves only those. On a phone one list, so that the changes stay in view. */
export function KindChoice({ counts, chosen, onChoose }: KindChoiceProps) {
  const all = [...counts.values()].reduce((sum, count) => sum + count, 0);
  const choices = [...counts].map(([kind, count]) => ({
    value: kind,
    label: `${taskTitle(kind)} ${count.toLocaleString('en-GB')}`,
  }));
  return (
    <>
      <div className="sm:hidden print:hidden">
        <BareSelect
          name={words.filter}
          choices={[{ value: 'all', label: `${words.all} ${all.toLocaleString('en-GB')}` }, ...choices]}
          value={chosen ?? 'all'}
          onChoose={(kind) => onChoose(kind === 'all' ? undefined : kind)}
        />
      </div>
      <fieldset className="flex flex-wrap gap-2 max-sm:hidden print:hidden">
        <legend className="sr-only">{words.filter}</legend>
        <Kind title={words.all} count={all} pressed={chosen === undefined} onPress={() => onChoose(undefined)} />
        {[...counts].map(([kind, count]) => (
          <Kind
            key={kind}
            title={taskTitle(kind)}
            count={count}
            pressed={chosen === kind}
            onPress={() => onChoose(chosen === kind ? undefined : kind)}
          />
        ))}
      </fieldset>
    </>
  );
}

interface KindProps {
  readonly title: string;
  readonly count: number;
  readonly pressed: boolean;
  readonly onPress: () => void;
}

function Kind({ title, count, pressed, onPress }: KindProps) {
  return (
    <Button
      aria-pressed={pressed}
      className={pressed ? 'border-ink bg-selected underline' : undefined}
      onClick={onPress}
    >
      {title} <span className="tabular-nums">{count.toLocaleString('en-GB')}</span>
    </Button>
  );
}
