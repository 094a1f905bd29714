import { useEffect, useMemo, useRef, useState, useSyncExternalStore } from 'react';
import type { Plan } from '#engine/model/edit.ts';
import { previewTaking } from '#engine/patch/preview-taking.ts';
import type { LibraryRevision } from '#engine/type/pin.ts';
import { planRefusalSentence } from '#words/plans.ts';
import { TAKE_WORDS } from '#words/rig-types.ts';
import { SHEET_WORDS } from '#words/sheet.ts';
import type { Sheet } from '../../../grid/sheet.ts';
import { carryOut } from '../../../grid/sheet-actions.ts';
import { Button } from '../../../kit/button.tsx';
import { Dialog } from '../../../kit/dialog.tsx';
import { Asked } from '../../../panels/library/asked.tsx';
import { useType } from '../../../panels/library/use-library.ts';
import { ModeChoices } from './mode-choices.tsx';
import { type Choice, firstChoices, nameInRig, newChoices, planOfChoices } from './taking.ts';
import { unitsMoved, WhatTaking } from './what-taking.tsx';

export interface TakeTypeDialogProps {
  readonly sheet: Sheet;
  readonly crewId: string;
  readonly typeId: string;
  /** The type of the rig it is taken for; null: one the rig has not had before. */
  readonly type: string | null;
  readonly onClose: () => void;
}

/** The newest revision of a library's type, about to be copied into the rig: which modes, what it changes, what it would clash with. */
export function TakeTypeDialog({ sheet, crewId, typeId, type, onClose }: TakeTypeDialogProps) {
  const asked = useType({ crewId, typeId });
  if (asked.value === undefined) {
    return (
      <Dialog
        title={TAKE_WORDS.loading}
        onClose={onClose}
        answers={<Button onClick={onClose}>{SHEET_WORDS.leave}</Button>}
      >
        <Asked answer={asked}>{() => null}</Asked>
      </Dialog>
    );
  }
  const { number, hash, type: content } = asked.value.newest;
  const revision = { typeId, number, hash, type: content };
  return <Take key={`${typeId} ${number}`} sheet={sheet} type={type} revision={revision} onClose={onClose} />;
}

type TakeProps = Pick<TakeTypeDialogProps, 'sheet' | 'type' | 'onClose'> & { readonly revision: LibraryRevision };

function Take({ sheet, type, revision, onClose }: TakeProps) {
  const { store } = sheet;
  const rig = useSyncExternalStore(store.subscribe, store.rig);
  const [name, setName] = useState(() => type ?? nameInRig(revision.type));
  const [choices, setChoices] = useState<readonly Choice[]>(() =>
    type === null ? newChoices(revision) : firstChoices(rig, type, revision),
  );
  const plan = useMemo(() => planOfChoices(rig, name, revision, choices), [rig, name, revision, choices]);
  const preview = useMemo(() => (plan.ok ? previewTaking(rig, plan.value) : undefined), [rig, plan]);
  const carry = (take: Plan) => {
    onClose();
    carryOut(sheet, take);
  };
  const main = useRef<HTMLButtonElement>(null);
  useEffect(() => main.current?.focus(), []);
  const moves = preview?.moves ?? [];
  const take = (also: Plan['edits']) => {
    if (plan.ok) carry({ ...plan.value, edits: [...plan.value.edits, ...also] });
  };
  const { maker, model } = revision.type;
  const answers = (
    <>
      <Button onClick={onClose}>{SHEET_WORDS.leave}</Button>
      {moves.length === 0 ? null : <Button onClick={() => take([])}>{TAKE_WORDS.takeAsIs}</Button>}
      <Button ref={main} look="main" disabled={!plan.ok} onClick={() => take(moves)}>
        {moves.length === 0 ? TAKE_WORDS.take : TAKE_WORDS.takeAndMove(unitsMoved(moves))}
      </Button>
    </>
  );
  return (
    <Dialog title={TAKE_WORDS.title(`${maker} ${model}`.trim(), revision.number)} onClose={onClose} answers={answers}>
      <ModeChoices
        kind={type === null ? 'new' : 'known'}
        name={name}
        onName={setName}
        revision={revision}
        choices={choices}
        onChoose={setChoices}
      />
      {preview === undefined ? null : <WhatTaking rig={rig} type={revision.type} preview={preview} />}
      {plan.ok ? null : <p role="status">{planRefusalSentence(plan.error, rig)}</p>}
      <p className="text-soft">{TAKE_WORDS.note}</p>
    </Dialog>
  );
}
