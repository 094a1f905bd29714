import { useState } from 'react';
import { getRow } from '#base/table.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import type { Fault } from '#engine/model/record.ts';
import { reopenFault } from '#engine/patch/upkeep/fault-plans.ts';
import { byOn, UPKEEP_WORDS as words } from '#words/upkeep.ts';
import { LinkButton } from '../kit/link-button.tsx';
import { Mark } from '../kit/mark.tsx';
import type { CardScene } from '../plant/card-list.tsx';
import { carryOutPlan } from '../workspace/carry-out-plan.ts';
import { MendDialog } from './mend-dialog.tsx';
import { nameOfUnit } from './name-of-unit.ts';
import { SwapDialog } from './swap-dialog.tsx';
import { UnitWord } from './unit-word.tsx';

export interface FaultLineProps {
  readonly scene: CardScene;
  readonly fault: Fault;
  /** Opens all that is of its unit; left out where that stands there already. */
  readonly onUnit?: ((id: FixtureId) => void) | undefined;
}

/** A fault: at which unit, what, who saw it, what became of it, and what to do about it. */
export function FaultLine({ scene, fault, onUnit }: FaultLineProps) {
  const { store, rig, writable } = scene;
  const [asking, setAsking] = useState<'mend' | 'swap'>();
  const unit = nameOfUnit(rig, fault);
  const close = () => setAsking(undefined);
  const isThere = getRow(rig.fixtures, fault.unit) !== undefined;
  return (
    <div className="flex flex-wrap items-baseline gap-x-3 gap-y-0.5 py-1.5 [overflow-wrap:anywhere]">
      {fault.state === 'open' ? <Mark severity="caution" /> : null}
      {onUnit === undefined ? null : <UnitWord rig={rig} card={fault} onUnit={onUnit} />}
      <span>{fault.what}</span>
      <span className="text-soft">{byOn(fault.seenBy, fault.seenOn)}</span>
      {fault.state === 'mended' ? <Mended fault={fault} /> : null}
      {writable === 'no' ? null : (
        <span className="ml-auto flex gap-x-4">
          {fault.state === 'open' ? (
            <>
              <LinkButton aria-label={words.mendOf(unit, fault.what)} onClick={() => setAsking('mend')}>
                {words.mend}
              </LinkButton>
              {isThere ? (
                <LinkButton aria-label={words.swapOf(unit)} onClick={() => setAsking('swap')}>
                  {words.swapAt}
                </LinkButton>
              ) : null}
            </>
          ) : (
            <LinkButton
              aria-label={words.reopenOf(unit, fault.what)}
              onClick={() => carryOutPlan(store, reopenFault(store.rig(), fault.id))}
            >
              {words.reopen}
            </LinkButton>
          )}
        </span>
      )}
      {asking === 'mend' ? <MendDialog store={store} fault={fault} unit={unit} onClose={close} /> : null}
      {asking === 'swap' ? (
        <SwapDialog store={store} unit={fault.unit as FixtureId} fault={fault.id} onClose={close} />
      ) : null}
    </div>
  );
}

const Mended = ({ fault }: { readonly fault: Fault }) => (
  <span>
    {fault.done} <span className="text-soft">{byOn(fault.doneBy, fault.doneOn)}</span>
  </span>
);
