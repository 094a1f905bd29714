import { useEffect, useMemo, useRef, useSyncExternalStore } from 'react';
import { previewPlan } from '#engine/patch/preview-plan.ts';
import { PREVIEW_WORDS, SHEET_WORDS } from '#words/sheet.ts';
import type { Previewed, Sheet } from '../grid/sheet.ts';
import { carryOut } from '../grid/sheet-actions.ts';
import { useSheet } from '../grid/use-sheet.ts';
import { Button } from '../kit/button.tsx';
import { Dialog } from '../kit/dialog.tsx';
import { WhatChanges } from './what-changes.tsx';

/** A plan before it is applied: what moves from where to where, and which findings it clears or raises. */
export function PreviewDialog({ sheet }: { readonly sheet: Sheet }) {
  const previewed = useSheet(sheet, (state) => state.preview);
  return previewed === undefined ? null : <LookAt sheet={sheet} previewed={previewed} />;
}

function LookAt({ sheet, previewed }: { readonly sheet: Sheet; readonly previewed: Previewed }) {
  const { store } = sheet;
  const { plan, says, costs } = previewed;
  const rig = useSyncExternalStore(store.subscribe, store.rig);
  const preview = useMemo(() => previewPlan(rig, plan), [rig, plan]);
  const leave = () => sheet.set({ preview: undefined });
  const apply = () => {
    leave();
    carryOut(sheet, plan);
  };
  const nothing = preview.rig === rig;
  const main = useRef<HTMLButtonElement>(null);
  useEffect(() => main.current?.focus(), []);
  const answers = (
    <>
      <Button onClick={leave}>{SHEET_WORDS.leave}</Button>
      <Button ref={main} look="main" onClick={apply} disabled={nothing}>
        {SHEET_WORDS.apply}
      </Button>
    </>
  );
  return (
    <Dialog title={PREVIEW_WORDS.title(plan.name)} onClose={leave} answers={answers}>
      {says.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {nothing ? <p>{PREVIEW_WORDS.nothing}</p> : <WhatChanges before={rig} preview={preview} costs={costs} />}
    </Dialog>
  );
}
