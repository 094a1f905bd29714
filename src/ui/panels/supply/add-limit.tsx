import { useState } from 'react';
import { CARD_CELLS, parseCardText, readCardCell } from '#engine/model/card.ts';
import { addNamed } from '#engine/supply/feed-plans.ts';
import { SUPPLY_WORDS as words } from '#words/supply.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import { TextField } from '../../kit/text-field.tsx';
import { AskNameDialog } from '../ask-name-dialog.tsx';
import { carryOut, type Scene } from './scene.ts';

export interface AddLimitProps {
  readonly scene: Scene;
  /** The position; left out, it is asked for. */
  readonly position?: string;
}

const NOTHING = { kilograms: '', person: '', on: '' };

/** Asks what a position may hold, by whose word and since when. No weight is ever proposed. */
export function AddLimit({ scene, position }: AddLimitProps) {
  const [asking, setAsking] = useState(false);
  const [typed, setTyped] = useState(NOTHING);
  const [refused, setRefused] = useState<string>();
  if (scene.writable === 'no') return null;
  const kilograms = parseCardText(CARD_CELLS.limit.kilograms, typed.kilograms);
  const isWeight = readCardCell(CARD_CELLS.limit.kilograms, kilograms) !== null;
  const close = () => {
    setAsking(false);
    setTyped(NOTHING);
    setRefused(undefined);
  };
  const add = (name: string) => {
    if (!isWeight) return setRefused(words.noWeight);
    const cells = { kilograms: Number(kilograms), person: typed.person.trim(), on: typed.on.trim() };
    const why = carryOut(scene, addNamed(scene.store.rig(), 'limit', name, cells));
    return why === undefined ? close() : setRefused(why);
  };
  return (
    <>
      <LinkButton
        {...(position === undefined ? {} : { 'aria-label': words.limitName(position) })}
        onClick={() => setAsking(true)}
      >
        {position === undefined ? words.addLimit : words.sayLimit}
      </LinkButton>
      {asking ? (
        <AskNameDialog
          title={words.addLimit}
          label={words.nameOf.limit}
          initial={position ?? ''}
          submit={words.addWord}
          busy={false}
          refused={refused === undefined ? undefined : { what: refused }}
          onName={add}
          onClose={close}
        >
          {(['kilograms', 'person', 'on'] as const).map((field) => (
            <TextField
              key={field}
              label={words.cells[field]}
              hint={words.limitHints[field]}
              inputMode={field === 'kilograms' ? 'decimal' : 'text'}
              value={typed[field]}
              onText={(text) => setTyped({ ...typed, [field]: text })}
            />
          ))}
        </AskNameDialog>
      ) : null}
    </>
  );
}
