import { canPutBack, putBackPlan } from '#engine/patch/put-back-plan.ts';
import type { ToldChange } from '#wire/history.ts';
import { changeSentence, HISTORY_WORDS as words } from '#words/history.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import type { RigStore } from '../../live/rig-store.ts';
import { carryOutPlan } from '../../workspace/carry-out-plan.ts';

export interface PutBackProps {
  readonly store: RigStore;
  readonly told: ToldChange;
  readonly writable: boolean;
  readonly onSaid: (text: string) => void;
}

/** Sets what one change changed to what it was before; nothing where that cannot be done by itself. */
export function PutBack({ store, told, writable, onSaid }: PutBackProps) {
  if (!writable || told.long || !canPutBack(told.change)) return null;
  const sentence = changeSentence(told);
  const putBack = () => {
    const why = carryOutPlan(store, putBackPlan(store.rig(), told.change));
    onSaid(why ?? words.didPutBack(sentence));
  };
  return (
    <LinkButton aria-label={words.putBackOf(sentence)} onClick={putBack}>
      {words.putBack}
    </LinkButton>
  );
}
