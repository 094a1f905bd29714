import { useState, useSyncExternalStore } from 'react';
import { foldName } from '#engine/model/ids.ts';
import type { Mode } from '#engine/model/rig.ts';
import { TYPES_WORDS } from '#words/sheet.ts';
import type { Sheet } from '../../grid/sheet.ts';
import { carryOut } from '../../grid/sheet-actions.ts';
import { Button } from '../../kit/button.tsx';
import { LinkButton } from '../../kit/link-button.tsx';
import { Message } from '../../kit/message.tsx';
import { Panel } from '../panel.tsx';
import { LineField } from './line-field.tsx';
import { formatSlots, modesInUse, parseSlots, renameMode, type UsedMode } from './modes-in-use.ts';

export interface TypesPanelProps {
  readonly sheet: Sheet;
  readonly onClose: () => void;
}

type Names = Pick<UsedMode, 'type' | 'mode'>;

/** The types in use: name, modes, and the slots of each break. */
export function TypesPanel({ sheet, onClose }: TypesPanelProps) {
  const { store } = sheet;
  const rig = useSyncExternalStore(store.subscribe, store.rig);
  const [trouble, setTrouble] = useState<string>();
  const { known, unknown, units } = modesInUse(rig);
  const setSlots = ({ type, mode }: Names, text: string) => {
    const footprints = parseSlots(text);
    setTrouble(footprints === undefined ? TYPES_WORDS.badSlots : undefined);
    if (footprints) carryOut(sheet, { name: 'set-mode', edits: [{ kind: 'set-mode', type, mode, footprints }] });
  };
  const rename = (mode: Mode, to: Names) => {
    setTrouble(foldName(to.type) === '' ? TYPES_WORDS.noName : undefined);
    if (foldName(to.type) !== '') carryOut(sheet, renameMode(rig, mode, to));
  };
  const remove = ({ type, mode }: Names) =>
    carryOut(sheet, { name: 'set-mode', edits: [{ kind: 'remove-mode', type, mode }] });
  const frozen = !store.canEdit();
  return (
    <Panel title={TYPES_WORDS.title} about={TYPES_WORDS.about} onClose={onClose}>
      {trouble === undefined ? null : <Message severity="blocker" said={{ what: trouble }} />}
      {known.length === 0 ? <p>{TYPES_WORDS.none}</p> : <Heads />}
      <ul className="flex flex-col gap-1">
        {known.map((mode) => (
          <li key={mode.id} className={LINE}>
            <LineField
              name={TYPES_WORDS.type}
              value={mode.type}
              disabled={frozen}
              onWrite={(type) => rename(mode, { type, mode: mode.mode })}
            />
            <LineField
              name={TYPES_WORDS.mode}
              value={mode.mode}
              disabled={frozen}
              onWrite={(name) => rename(mode, { type: mode.type, mode: name })}
            />
            <LineField
              name={TYPES_WORDS.slotsOf(mode.type, mode.mode)}
              value={formatSlots(mode.footprints)}
              disabled={frozen}
              onWrite={(text) => setSlots(mode, text)}
            />
            <span className="text-right text-soft tabular-nums">{units.get(mode.id) ?? 0}</span>
            <LinkButton
              aria-label={TYPES_WORDS.remove(mode.type, mode.mode)}
              disabled={frozen}
              onClick={() => remove(mode)}
            >
              {TYPES_WORDS.removeWord}
            </LinkButton>
          </li>
        ))}
      </ul>
      {unknown.length === 0 ? null : <h3>{TYPES_WORDS.unknown}</h3>}
      <ul className="flex flex-col gap-1">
        {unknown.map(({ id, type, mode }) => (
          <li key={id} className={LINE}>
            <span className="truncate">{type}</span>
            <span className="truncate">{mode}</span>
            <LineField
              name={TYPES_WORDS.describe(type, mode)}
              value=""
              placeholder={TYPES_WORDS.describeWord}
              disabled={frozen}
              onWrite={(text) => setSlots({ type, mode }, text)}
            />
            <span className="text-right text-soft tabular-nums">{units.get(id) ?? 0}</span>
          </li>
        ))}
      </ul>
      <AddMode frozen={frozen ? 'frozen' : 'open'} onAdd={setSlots} />
    </Panel>
  );
}

const LINE = 'grid grid-cols-[1fr_7rem_4.5rem_2rem_3.5rem] items-center gap-2';

function Heads() {
  return (
    <div aria-hidden="true" className={`${LINE} text-soft`}>
      <span>{TYPES_WORDS.type}</span>
      <span>{TYPES_WORDS.mode}</span>
      <span>{TYPES_WORDS.slots}</span>
      <span className="text-right">{TYPES_WORDS.used}</span>
    </div>
  );
}

interface AddModeProps {
  readonly frozen: 'frozen' | 'open';
  readonly onAdd: (names: Names, slots: string) => void;
}

function AddMode({ frozen, onAdd }: AddModeProps) {
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
      <div className={LINE}>
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
        <LineField name={TYPES_WORDS.slots} placeholder="27" value={slots} disabled={closed} onWrite={setSlots} />
      </div>
      <div>
        <Button disabled={closed || !ready} onClick={add}>
          {TYPES_WORDS.add}
        </Button>
      </div>
    </div>
  );
}
