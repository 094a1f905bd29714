import { useState } from 'react';
import { formatAddress, parseAddress } from '#engine/address/notation.ts';
import { absolute } from '#engine/model/address.ts';
import { movePlan } from '#engine/patch/move-plan.ts';
import { placePlan } from '#engine/patch/place-plan.ts';
import { renumberChannels, renumberUnits } from '#engine/patch/renumber-plans.ts';
import { swapPlan } from '#engine/patch/swap-plan.ts';
import { PLANS_WORDS } from '#words/sheet.ts';
import type { Sheet } from '../../../grid/sheet.ts';
import { duplicateSelected, fillSelectedDown, removeSelected, selectedBlock } from '../../../grid/sheet-actions.ts';
import { showPlan, showSeries } from '../../../grid/show-plan.ts';
import { useSheet } from '../../../grid/use-sheet.ts';
import { Button } from '../../../kit/button.tsx';
import { TextField } from '../../../kit/text-field.tsx';
import { Panel } from '../../panel.tsx';
import { AllocateSection } from './allocate-section.tsx';
import { LockSection } from './lock-section.tsx';
import { NeedsSection } from './needs-section.tsx';
import { RepairSection } from './repair-section.tsx';
import { SpareSection } from './spare-section.tsx';

export interface PlansPanelProps {
  readonly sheet: Sheet;
  readonly onClose: () => void;
}

/** What can be done to the selected units at once; each is shown before it is done. */
export function PlansPanel({ sheet, onClose }: PlansPanelProps) {
  useSheet(sheet, (state) => state.selection);
  const { rows } = selectedBlock(sheet);
  const [from, setFrom] = useState('1:1');
  const [first, setFirst] = useState('1');
  const [step, setStep] = useState('1');
  const rig = () => sheet.store.rig();
  const address = parseAddress(from);
  const numbering = { fixtures: rows, from: Number(first), step: Number(step) };
  const badAddress = address.ok ? undefined : PLANS_WORDS.badAddress;
  const badNumber = isWhole(first) && isWhole(step) ? undefined : PLANS_WORDS.badNumber;
  const place = () =>
    address.ok && showPlan(sheet, placePlan(rig(), { fixtures: rows, from: address.value, breaks: 'in-one-universe' }));
  const [one, other] = rows;
  return (
    <Panel title={PLANS_WORDS.title} about={PLANS_WORDS.about(rows.length)} onClose={onClose}>
      <section className="flex flex-col gap-2">
        <TextField
          label={PLANS_WORDS.address}
          hint={PLANS_WORDS.addressHint}
          value={from}
          error={badAddress}
          onText={setFrom}
        />
        <div className="flex flex-wrap gap-2">
          <Button disabled={!address.ok} onClick={place}>
            {PLANS_WORDS.place}
          </Button>
          <Button
            disabled={!address.ok}
            onClick={() => address.ok && showPlan(sheet, movePlan(rig(), rows, { to: address.value }))}
          >
            {PLANS_WORDS.move(address.ok ? formatAddress(address.value) : formatAddress(absolute(1, 1)))}
          </Button>
          <Button
            disabled={rows.length !== 2}
            onClick={() => one && other && showPlan(sheet, swapPlan(rig(), one, other))}
          >
            {PLANS_WORDS.swap}
          </Button>
        </div>
      </section>
      <section className="flex flex-col gap-2 border-t border-rule-strong pt-3">
        <div className="grid grid-cols-2 gap-2">
          <TextField label={PLANS_WORDS.first} inputMode="numeric" value={first} error={badNumber} onText={setFirst} />
          <TextField label={PLANS_WORDS.step} inputMode="numeric" value={step} onText={setStep} />
        </div>
        <div className="flex flex-wrap gap-2">
          <Button
            disabled={badNumber !== undefined}
            onClick={() => showPlan(sheet, renumberChannels(rig(), numbering))}
          >
            {PLANS_WORDS.channels}
          </Button>
          <Button disabled={badNumber !== undefined} onClick={() => showPlan(sheet, renumberUnits(rig(), numbering))}>
            {PLANS_WORDS.units}
          </Button>
        </div>
      </section>
      <section className="flex flex-col gap-2 border-t border-rule-strong pt-3">
        <p className="text-soft">{PLANS_WORDS.seriesAbout}</p>
        <div className="flex flex-wrap gap-2">
          <Button onClick={() => showSeries(sheet)}>{PLANS_WORDS.series}</Button>
          <Button onClick={() => fillSelectedDown(sheet)}>{PLANS_WORDS.fillDown}</Button>
        </div>
      </section>
      <section className="flex flex-col gap-2 border-t border-rule-strong pt-3">
        <h3>{PLANS_WORDS.rows}</h3>
        <div className="flex flex-wrap gap-2">
          <Button onClick={() => duplicateSelected(sheet)}>{PLANS_WORDS.duplicate}</Button>
          <Button look="danger" onClick={() => removeSelected(sheet)}>
            {PLANS_WORDS.remove}
          </Button>
        </div>
      </section>
      <LockSection sheet={sheet} rows={rows} />
      <AllocateSection sheet={sheet} rows={rows} />
      <SpareSection sheet={sheet} row={one} />
      <NeedsSection sheet={sheet} rows={rows} />
      <RepairSection sheet={sheet} rows={rows} />
    </Panel>
  );
}

const isWhole = (text: string) => /^\s*\d{1,6}\s*$/.test(text);
