import { type ReactNode, useId, useMemo, useState } from 'react';
import { randomId } from '#base/random-id.ts';
import { getRow } from '#base/table.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import { recordOf, type Spare } from '#engine/model/record.ts';
import { type DeviceIn, type SwapRequest, swapDevice } from '#engine/patch/upkeep/swap-device.ts';
import { unitName } from '#words/findings.ts';
import { spareText, UPKEEP_WORDS as words } from '#words/upkeep.ts';
import { Button } from '../kit/button.tsx';
import { Dialog } from '../kit/dialog.tsx';
import { Mark } from '../kit/mark.tsx';
import { Select } from '../kit/select.tsx';
import { TextField } from '../kit/text-field.tsx';
import type { RigStore } from '../live/rig-store.ts';
import { useCalmRig } from '../live/use-calm-rig.ts';
import { RefusedLine } from '../plant/refused-line.tsx';
import { carryOutPlan } from '../workspace/carry-out-plan.ts';
import { PersonDayFields, usePersonDay } from './person-day.tsx';
import { SwapPreview } from './swap-preview.tsx';

export interface SwapDialogProps {
  readonly store: RigStore;
  readonly unit: FixtureId;
  /** The fault it is done for. */
  readonly fault?: string | undefined;
  readonly onClose: () => void;
}

const NOTHING = { where: '', type: '', mode: '', serialOut: '', serialIn: '', why: '' };

/** Asks what comes in for a unit's device, and shows what that means before it is done. */
export function SwapDialog({ store, unit, fault, onClose }: SwapDialogProps) {
  const form = useId();
  const rig = useCalmRig(store);
  const { spares, faults } = recordOf(rig.cards);
  const open = faults.filter((each) => each.unit === unit && each.state === 'open');
  const fixture = getRow(rig.fixtures, unit);
  const called = unitName(fixture);
  const [id] = useState(randomId);
  const [spare, setSpare] = useState(() => likeliest(spares, fixture?.type ?? ''));
  const [typed, setTyped] = useState(NOTHING);
  const [mended, setMended] = useState(fault ?? '');
  const [who, setWho] = usePersonDay();
  const [refused, setRefused] = useState<string>();
  const { where, type, mode } = typed;
  const device = useMemo(
    (): DeviceIn => (spare === '' ? { from: 'elsewhere', where, type, mode } : { from: 'spare', spare }),
    [spare, where, type, mode],
  );
  const request: SwapRequest = {
    ...{ id, unit, called, device, ...who },
    ...{ serialOut: typed.serialOut, serialIn: typed.serialIn, why: typed.why },
    mends: mended === '' ? undefined : { fault: mended, done: words.swapped },
  };
  const swap = () => {
    const why = carryOutPlan(store, swapDevice(store.rig(), request));
    if (why === undefined) onClose();
    else setRefused(why);
  };
  const field = (name: keyof typeof NOTHING) => (
    <TextField
      label={words[name]}
      autoComplete="off"
      value={typed[name]}
      onText={(text) => setTyped({ ...typed, [name]: text })}
    />
  );
  const answers = (
    <>
      <Button onClick={onClose}>{words.cancel}</Button>
      <Button type="submit" form={form} look="main">
        {words.swapWord}
      </Button>
    </>
  );
  return (
    <Dialog title={words.swapTitle(called)} onClose={onClose} answers={answers}>
      <p className="text-soft">{words.swapAbout}</p>
      <p>
        <Mark severity="caution" className="mr-1" />
        {words.swapCaution}
      </p>
      <form
        id={form}
        className="flex flex-col gap-3"
        onSubmit={(event) => {
          event.preventDefault();
          swap();
        }}
      >
        <Select
          label={words.comesFrom}
          choices={[
            ...spares.map((each) => ({ value: each.id, label: spareText(each) })),
            { value: '', label: words.elsewhere },
          ]}
          value={spare}
          onChoose={setSpare}
        />
        {spare === '' ? (
          <>
            {field('where')}
            <Pair>
              {field('type')}
              {field('mode')}
            </Pair>
          </>
        ) : null}
        <Pair>
          {field('serialOut')}
          {field('serialIn')}
        </Pair>
        {field('why')}
        {open.length === 0 ? null : (
          <Select
            label={words.mends}
            choices={[
              { value: '', label: words.mendsNone },
              ...open.map((each) => ({ value: each.id, label: each.what })),
            ]}
            value={mended}
            onChoose={setMended}
          />
        )}
        <Pair>
          <PersonDayFields label={words.who} value={who} onValue={setWho} />
        </Pair>
      </form>
      <SwapPreview rig={rig} unit={unit} device={device} mended={mended} />
      <RefusedLine why={refused} />
    </Dialog>
  );
}

const Pair = ({ children }: { readonly children: ReactNode }) => (
  <div className="grid grid-cols-2 gap-3">{children}</div>
);

/** A spare of the same type that is left, else a device from elsewhere. */
const likeliest = (spares: readonly Spare[], type: string): string =>
  spares.find((each) => each.count !== 0 && each.type.toLowerCase() === type.toLowerCase())?.id ?? '';
