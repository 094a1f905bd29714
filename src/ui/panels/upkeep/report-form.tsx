import { useId, useState } from 'react';
import { randomId } from '#base/random-id.ts';
import { reportFault } from '#engine/patch/upkeep/fault-plans.ts';
import { unitName } from '#words/findings.ts';
import { UPKEEP_WORDS as words } from '#words/upkeep.ts';
import { Button } from '../../kit/button.tsx';
import { TextField } from '../../kit/text-field.tsx';
import type { CardScene } from '../../plant/card-list.tsx';
import { RefusedLine } from '../../plant/refused-line.tsx';
import { findUnit } from '../../upkeep/find-unit.ts';
import { PersonDayFields, usePersonDay } from '../../upkeep/person-day.tsx';
import { UnitField, unitTrouble } from '../../upkeep/unit-field.tsx';
import { carryOutPlan } from '../../workspace/carry-out-plan.ts';

/** A fault in one line: which unit, what is wrong, who saw it and when. */
export function ReportForm({ scene: { store, rig, writable } }: { readonly scene: CardScene }) {
  const usual = useId();
  const [unit, setUnit] = useState('');
  const [what, setWhat] = useState('');
  const [who, setWho] = usePersonDay();
  const [refused, setRefused] = useState<string>();
  const [told, setTold] = useState('');
  if (writable === 'no') return null;
  const report = () => {
    const found = findUnit(store.rig(), unit);
    setTold('');
    if (found.is !== 'one') return setRefused(unitTrouble(store.rig(), unit));
    const called = unitName(found.fixture);
    const request = { id: randomId(), unit: found.fixture.id, called, what, ...who };
    const why = carryOutPlan(store, reportFault(store.rig(), request));
    setRefused(why);
    if (why !== undefined) return;
    setTold(words.reported(called));
    setUnit('');
    setWhat('');
  };
  return (
    <form
      aria-label={words.report}
      className="flex flex-col gap-2 py-3"
      onSubmit={(event) => {
        event.preventDefault();
        report();
      }}
    >
      <div className="grid grid-cols-[2fr_3fr_2fr_1.5fr_auto] items-end gap-2 max-lg:grid-cols-2">
        <div>
          <UnitField rig={rig} value={unit} onText={setUnit} />
        </div>
        <div>
          <TextField label={words.what} autoComplete="off" list={usual} value={what} onText={setWhat} />
          <datalist id={usual}>
            {words.usual.map((text) => (
              <option key={text} value={text} />
            ))}
          </datalist>
        </div>
        <PersonDayFields label={words.by} value={who} onValue={setWho} />
        <Button type="submit" look="main">
          {words.report}
        </Button>
      </div>
      <RefusedLine why={refused} />
      <p role="status" className="text-soft empty:hidden">
        {told}
      </p>
    </form>
  );
}
