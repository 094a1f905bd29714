import { useState } from 'react';
import { foldName } from '#engine/model/ids.ts';
import { TYPES_WORDS } from '#words/sheet.ts';
import { Button } from '../../../kit/button.tsx';
import { LineField } from '../../../kit/line-field.tsx';
import { parseSlots, type UsedMode } from './modes-in-use.ts';

type Names = Pick<UsedMode, 'type' | 'mode'>;

export interface AddModeProps {
  readonly frozen: 'frozen' | 'open';
  readonly onAdd: (names: Names, slots: string) => void;
}

/** A mode that is known by its slots only, typed in. */
export function AddMode({ frozen, onAdd }: AddModeProps) {
  const [names, setNames] = useState<Names>({ type: '', mode: '' });
  const [slots, setSlots] = useState('');
  const closed = frozen === 'frozen';
  const ready = foldName(names.type) !== '' && slots !== '';
  const add = () => {
    onAdd(names, slots);
    if (parseSlots(slots) === undefined) return;
    setNames({ type: names.type, mode: '' });
    setSlots('');
  };
  return (
    <div className="flex flex-col gap-2 border-t border-rule-strong pt-3">
      <h3>{TYPES_WORDS.add}</h3>
      <div className="grid grid-cols-[1fr_8rem_5rem] gap-2">
        <LineField
          name={TYPES_WORDS.type}
          placeholder={TYPES_WORDS.type}
          value={names.type}
          disabled={closed}
          onWrite={(type) => setNames({ ...names, type })}
        />
        <LineField
          name={TYPES_WORDS.mode}
          placeholder={TYPES_WORDS.mode}
          value={names.mode}
          disabled={closed}
          onWrite={(mode) => setNames({ ...names, mode })}
        />
        <LineField
          name={TYPES_WORDS.slots}
          placeholder={TYPES_WORDS.slots}
          value={slots}
          disabled={closed}
          onWrite={setSlots}
        />
      </div>
      <div>
        <Button disabled={closed || !ready} onClick={add}>
          {TYPES_WORDS.addWord}
        </Button>
      </div>
    </div>
  );
}
