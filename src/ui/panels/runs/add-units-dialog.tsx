import { useMemo, useState } from 'react';
import { getRow } from '#base/table.ts';
import { nameKey } from '#engine/model/card.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';
import type { Station } from '#engine/network/runs/measured-run.ts';
import type { RunLine } from '#engine/network/runs/run-list.ts';
import { putOnRun } from '#engine/patch/runs/chain-plans.ts';
import { unitName } from '#words/findings.ts';
import { RUNS_WORDS, ADD_UNITS_WORDS as words } from '#words/runs.ts';
import { KIT_WORDS } from '#words/screens.ts';
import { Button } from '../../kit/button.tsx';
import { Dialog } from '../../kit/dialog.tsx';
import { Select } from '../../kit/select.tsx';
import { chosenUnits } from '../../live/chosen-units.ts';
import type { RigStore } from '../../live/rig-store.ts';
import { FreeUnitsList } from './free-units-list.tsx';
import { carryOutSaying, type Said } from './run-desk.ts';

export interface AddUnitsDialogProps {
  readonly store: RigStore;
  readonly rig: Rig;
  readonly chosen: RunLine;
  readonly here: Station | undefined;
  readonly onSaid: (said: Said) => void;
  readonly onClose: () => void;
}

/** Asks which units go on a run, in which order and where: those chosen in the sheet, or some that are on no run. */
export function AddUnitsDialog({ store, rig, chosen, here, onSaid, onClose }: AddUnitsDialogProps) {
  const inSheet = useMemo(() => arrivals(rig, chosenUnits(store).ids(), chosen.key), [rig, store, chosen.key]);
  const [which, setWhich] = useState<'chosen' | 'free'>(inSheet.length > 1 ? 'chosen' : 'free');
  const [picked, setPicked] = useState<readonly FixtureId[]>([]);
  const [order, setOrder] = useState<'given' | 'place'>('place');
  const [where, setWhere] = useState<'end' | 'after'>('end');
  const fixtures = which === 'chosen' ? inSheet : picked;
  const leaving = fixtures.flatMap((id) => getRow(rig.fixtures, id)?.run.trim() || []);
  const put = () => {
    const after = where === 'after' ? here?.link.id : undefined;
    const plan = putOnRun(store.rig(), { run: chosen.name, fixtures, order, after });
    onSaid(carryOutSaying(store, plan, RUNS_WORDS.putOn(fixtures.length, chosen.name)));
    onClose();
  };
  const places = here === undefined ? [] : [{ value: 'after', label: words.after(nameOf(here)) } as const];
  return (
    <Dialog
      title={words.title(chosen.name)}
      onClose={onClose}
      answers={
        <>
          <Button onClick={onClose}>{KIT_WORDS.cancel}</Button>
          <Button look="main" disabled={fixtures.length === 0} onClick={put}>
            {words.done(fixtures.length)}
          </Button>
        </>
      }
    >
      <Select
        label={words.which}
        choices={[
          ...(inSheet.length === 0 ? [] : [{ value: 'chosen', label: words.chosen(inSheet.length) } as const]),
          { value: 'free', label: words.free },
        ]}
        value={which}
        onChoose={setWhich}
      />
      {which === 'free' ? <FreeUnitsList rig={rig} picked={picked} onPick={setPicked} /> : null}
      <div className="grid grid-cols-2 gap-3 max-sm:grid-cols-1">
        <Select
          label={words.order}
          choices={(['place', 'given'] as const).map((value) => ({ value, label: words.orders[value] }))}
          value={order}
          onChoose={setOrder}
        />
        <Select
          label={words.where}
          choices={[{ value: 'end', label: words.atEnd }, ...places]}
          value={where}
          onChoose={setWhere}
        />
      </div>
      {leaving.length === 0 ? null : <p>{words.onOther(leaving.length, [...new Set(leaving)])}</p>}
    </Dialog>
  );
}

/** Those of `ids` that are there and not on the run already. */
const arrivals = (rig: Rig, ids: readonly FixtureId[], key: string): readonly FixtureId[] =>
  ids.filter((id) => {
    const fixture = getRow(rig.fixtures, id);
    return fixture !== undefined && nameKey(fixture.run) !== key;
  });

const nameOf = ({ link }: Station) =>
  link.kind === 'unit' ? unitName(link.fixture) : RUNS_WORDS.splitter(link.splitter.name);
