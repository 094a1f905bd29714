import { useMemo, useState } from 'react';
import { ok } from '#base/result.ts';
import { previewPlan } from '#engine/patch/preview-plan.ts';
import { type Balance, balancePlan } from '#engine/supply/balance/balance-plan.ts';
import { ampsText } from '#words/amounts.ts';
import { planRefusalSentence } from '#words/plans.ts';
import { PREVIEW_WORDS, SHEET_WORDS } from '#words/sheet.ts';
import { balanceSentences, SUPPLY_WORDS, BALANCE_WORDS as words } from '#words/supply.ts';
import { Button } from '../../kit/button.tsx';
import { Dialog } from '../../kit/dialog.tsx';
import { Message } from '../../kit/message.tsx';
import { Table } from '../../kit/table.tsx';
import { PreviewFindings } from '../../workspace/preview-findings.tsx';
import { carryOut, type Scene } from './scene.ts';

export interface BalanceDialogProps {
  readonly scene: Scene;
  /** Its key. */
  readonly supply: string;
  readonly onClose: () => void;
}

/** A balance before it is carried out: lines before and after, what moves, and which findings it clears or raises. */
export function BalanceDialog({ scene, supply, onClose }: BalanceDialogProps) {
  const made = useMemo(() => balancePlan(scene.rig, supply), [scene.rig, supply]);
  const [refused, setRefused] = useState<string>();
  const name = scene.supplies.find((load) => load.supply.key === supply)?.supply.name ?? supply;
  const apply = () => {
    if (!made.ok) return;
    const why = carryOut(scene, ok(made.value.plan));
    if (why === undefined) onClose();
    setRefused(why);
  };
  const answers = (
    <>
      <Button onClick={onClose}>{SHEET_WORDS.leave}</Button>
      <Button look="main" onClick={apply} disabled={!made.ok || scene.writable === 'no'}>
        {SHEET_WORDS.apply}
      </Button>
    </>
  );
  return (
    <Dialog title={words.title(name)} onClose={onClose} answers={answers}>
      {made.ok ? <Look scene={scene} balance={made.value} /> : <p>{planRefusalSentence(made.error, scene.rig)}</p>}
      {refused === undefined ? null : <Message severity="blocker" said={{ what: refused }} />}
    </Dialog>
  );
}

function Look({ scene, balance }: { readonly scene: Scene; readonly balance: Balance }) {
  const { before, after, moves, plan } = balance;
  const preview = useMemo(() => previewPlan(scene.rig, plan), [scene.rig, plan]);
  const lines = before.map((amps, at) => ({ line: at + 1, before: amps, after: after[at] ?? 0 }));
  return (
    <>
      <Table
        caption={words.caption}
        rowName="line"
        keyOf={({ line }) => String(line)}
        columns={[
          { key: 'line', heading: words.line, cell: ({ line }) => SUPPLY_WORDS.line(line, before.length) },
          { key: 'before', heading: words.before, numeric: true, cell: (row) => ampsText(row.before) },
          { key: 'after', heading: words.after, numeric: true, cell: (row) => <b>{ampsText(row.after)}</b> },
        ]}
        rows={lines}
      />
      {balanceSentences(balance).map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <Table
        caption={words.circuits}
        rowName="circuit"
        keyOf={({ circuit }) => circuit}
        columns={[
          { key: 'circuit', heading: words.circuit, cell: ({ circuit }) => circuit },
          { key: 'load', heading: words.load, numeric: true, cell: ({ amps }) => ampsText(amps) },
          { key: 'from', heading: words.from, cell: ({ from }) => words.phase(from) },
          { key: 'to', heading: words.to, cell: ({ to }) => <b>{words.phase(to)}</b> },
        ]}
        rows={moves}
      />
      <PreviewFindings
        title={PREVIEW_WORDS.cleared(preview.findingsRemoved.length)}
        findings={preview.findingsRemoved}
        rig={scene.rig}
      />
      <PreviewFindings
        title={PREVIEW_WORDS.raised(preview.findingsAdded.length)}
        findings={preview.findingsAdded}
        rig={preview.rig}
      />
    </>
  );
}
