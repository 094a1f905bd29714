import { useState } from 'react';
import type { Result } from '#base/result.ts';
import type { Plan } from '#engine/model/edit.ts';
import type { PlanRefusal } from '#engine/patch/plan-refusal.ts';
import { HOUSE_WORDS as words } from '#words/house.ts';
import { Button } from '../kit/button.tsx';
import { CONTROL_CLASSES } from '../kit/field-frame.tsx';
import { carryOutPlan } from '../workspace/carry-out-plan.ts';
import type { CardScene } from './card-list.tsx';
import { RefusedLine } from './refused-line.tsx';

export interface AddLineProps {
  readonly scene: CardScene;
  /** What is added, as `words` call it. */
  readonly what: keyof typeof words.add;
  readonly planOf: (line: string) => Result<Plan, PlanRefusal>;
}

/** One line to type and Enter: something more in a list. The field stays, so that the next can follow at once. */
export function AddLine({ scene, what, planOf }: AddLineProps) {
  const [line, setLine] = useState('');
  const [refused, setRefused] = useState<string>();
  if (scene.writable === 'no') return null;
  const add = () => {
    const why = carryOutPlan(scene.store, planOf(line));
    setRefused(why);
    if (why === undefined) setLine('');
  };
  return (
    <form
      className="flex flex-col gap-1 py-2"
      onSubmit={(event) => {
        event.preventDefault();
        add();
      }}
    >
      <div className="flex max-w-2xl gap-2">
        <input
          className={CONTROL_CLASSES}
          aria-label={words.add[what]}
          placeholder={`${words.add[what]}: ${words.lineHint[what]}`}
          autoComplete="off"
          value={line}
          onChange={(event) => setLine(event.currentTarget.value)}
        />
        <Button type="submit" aria-label={`${words.addWord}: ${words.add[what]}`}>
          {words.addWord}
        </Button>
      </div>
      <RefusedLine why={refused} />
    </form>
  );
}
