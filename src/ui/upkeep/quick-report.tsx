import { useState } from 'react';
import { randomId } from '#base/random-id.ts';
import { getRow } from '#base/table.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import { reportFault } from '#engine/patch/upkeep/fault-plans.ts';
import { unitName } from '#words/findings.ts';
import { UPKEEP_WORDS as words } from '#words/upkeep.ts';
import { Button } from '../kit/button.tsx';
import { Dialog } from '../kit/dialog.tsx';
import { Mark } from '../kit/mark.tsx';
import { TextField } from '../kit/text-field.tsx';
import { today } from '../kit/today.ts';
import { useMyName } from '../live/my-name.ts';
import type { RigStore } from '../live/rig-store.ts';
import { RefusedLine } from '../plant/refused-line.tsx';
import { carryOutPlan } from '../workspace/carry-out-plan.ts';

export interface QuickReportProps {
  readonly store: RigStore;
  readonly id: FixtureId;
  readonly onClose: () => void;
}

/** A fault of a unit in one more tap: what goes wrong most, each under a thumb; or in words of one's own. */
export function QuickReport({ store, id, onClose }: QuickReportProps) {
  const by = useMyName();
  const [what, setWhat] = useState('');
  const [refused, setRefused] = useState<string>();
  const unit = unitName(getRow(store.rig().fixtures, id));
  const report = (text: string) => {
    const request = { id: randomId(), unit: id, called: unit, what: text, by, on: today() };
    const why = carryOutPlan(store, reportFault(store.rig(), request));
    if (why === undefined) onClose();
    else setRefused(why);
  };
  return (
    <Dialog title={words.reportAt(unit)} onClose={onClose} answers={<Button onClick={onClose}>{words.cancel}</Button>}>
      <p className="text-soft">
        <Mark severity="caution" className="mr-1" />
        {words.hot}
      </p>
      <div className="grid grid-cols-2 gap-2">
        {words.usual.map((usual) => (
          <Button key={usual} className="min-h-12" onClick={() => report(usual)}>
            {usual}
          </Button>
        ))}
      </div>
      <form
        className="flex items-end gap-2"
        onSubmit={(event) => {
          event.preventDefault();
          report(what);
        }}
      >
        <div className="min-w-0 flex-1">
          <TextField label={words.other} autoComplete="off" value={what} onText={setWhat} />
        </div>
        <Button type="submit">{words.reportWord}</Button>
      </form>
      <RefusedLine why={refused} />
    </Dialog>
  );
}
