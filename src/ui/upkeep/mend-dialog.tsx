import { useId, useState } from 'react';
import type { Fault } from '#engine/model/record.ts';
import { mendFault } from '#engine/patch/upkeep/fault-plans.ts';
import { UPKEEP_WORDS as words } from '#words/upkeep.ts';
import { Button } from '../kit/button.tsx';
import { Dialog } from '../kit/dialog.tsx';
import { TextField } from '../kit/text-field.tsx';
import type { RigStore } from '../live/rig-store.ts';
import { RefusedLine } from '../plant/refused-line.tsx';
import { carryOutPlan } from '../workspace/carry-out-plan.ts';
import { PersonDayFields, usePersonDay } from './person-day.tsx';

export interface MendDialogProps {
  readonly store: RigStore;
  readonly fault: Fault;
  /** What its unit is called now. */
  readonly unit: string;
  readonly onClose: () => void;
}

/** Asks what was done about a fault. */
export function MendDialog({ store, fault, unit, onClose }: MendDialogProps) {
  const form = useId();
  const [done, setDone] = useState('');
  const [who, setWho] = usePersonDay();
  const [refused, setRefused] = useState<string>();
  const mend = () => {
    const why = carryOutPlan(store, mendFault(store.rig(), { fault: fault.id, done, ...who }));
    if (why === undefined) onClose();
    else setRefused(why);
  };
  const answers = (
    <>
      <Button onClick={onClose}>{words.cancel}</Button>
      <Button type="submit" form={form} look="main">
        {words.mendWord}
      </Button>
    </>
  );
  return (
    <Dialog title={words.mendTitle(unit)} onClose={onClose} answers={answers}>
      <p>{fault.what}</p>
      <form
        id={form}
        className="flex flex-col gap-3"
        onSubmit={(event) => {
          event.preventDefault();
          mend();
        }}
      >
        <TextField label={words.done} autoComplete="off" value={done} onText={setDone} />
        <div className="grid grid-cols-2 gap-3">
          <PersonDayFields label={words.who} value={who} onValue={setWho} />
        </div>
      </form>
      <RefusedLine why={refused} />
    </Dialog>
  );
}
