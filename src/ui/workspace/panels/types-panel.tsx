import { useState } from 'react';
import { foldName } from '#engine/model/ids.ts';
import type { Mode } from '#engine/model/rig.ts';
import { TYPES_WORDS } from '#words/sheet.ts';
import type { Sheet } from '../../grid/sheet.ts';
import { carryOut } from '../../grid/sheet-actions.ts';
import { Button } from '../../kit/button.tsx';
import { LinkButton } from '../../kit/link-button.tsx';
import { Message } from '../../kit/message.tsx';
import { useCalmRig } from '../../live/use-calm-rig.ts';
import { Panel } from '../panel.tsx';
import { LineField } from './line-field.tsx';
import { byType, formatSlots, modesInUse, parseSlots, renameMode, renameType, type UsedMode } from './modes-in-use.ts';

export interface TypesPanelProps {
  readonly sheet: Sheet;
  readonly onClose: () => void;
}

type Names = Pick<UsedMode, 'type' | 'mode'>;

/** The types in use: name, modes, and the slots of each break. */
export function TypesPanel({ sheet, onClose }: TypesPanelProps) {
  const { store } = sheet;
  const rig = useCalmRig(store);
  const [trouble, setTrouble] = useState<string>();
  const { known, unknown, units } = modesInUse(rig);
  const setSlots = ({ type, mode }: Names, text: string) => {
    const footprints = parseSlots(text);
    setTrouble(footprints === undefined ? TYPES_WORDS.badSlots : undefined);
    if (footprints) carryOut(sheet, { name: 'set-mode', edits: [{ kind: 'set-mode', type, mode, footprints }] });
  };
  const renameWhole = (modes: readonly Mode[], type: string) => {
    setTrouble(foldName(type) === '' ? TYPES_WORDS.noName : undefined);
    if (foldName(type) !== '') carryOut(sheet, renameType(rig, modes, type));
  };
  const frozen = !store.canEdit();
  return (
    <Panel title={TYPES_WORDS.title} about={TYPES_WORDS.about} onClose={onClose}>
      {trouble === undefined ? null : <Message severity="blocker" said={{ what: trouble }} />}
      {known.length === 0 ? <p>{TYPES_WORDS.none}</p> : null}
      <ul className="flex flex-col gap-4">
        {byType(known).map((modes) => {
          const type = modes[0]?.type ?? '';
          return (
            <li key={foldName(type)} className="flex flex-col gap-1">
              <LineField
                name={TYPES_WORDS.type}
                value={type}
                disabled={frozen}
                onWrite={(text) => renameWhole(modes, text)}
              />
              <ul className="flex flex-col gap-1 pl-5">
                {modes.map((mode) => (
                  <ModeLine
                    key={mode.id}
                    sheet={sheet}
                    mode={mode}
                    units={units.get(mode.id) ?? 0}
                    onSlots={setSlots}
                  />
                ))}
              </ul>
            </li>
          );
        })}
      </ul>
      {unknown.length === 0 ? null : <h3>{TYPES_WORDS.unknown}</h3>}
      <ul className="flex flex-col gap-1">
        {unknown.map(({ id, type, mode }) => (
          <li key={id} className="flex flex-wrap items-center gap-x-3 gap-y-1">
            <span className="flex-1">{mode === '' ? type : `${type}, ${mode}`}</span>
            <span className="text-soft">{TYPES_WORDS.units(units.get(id) ?? 0)}</span>
            <span className="w-24">
              <LineField
                name={TYPES_WORDS.describe(type, mode)}
                value=""
                placeholder={TYPES_WORDS.slots}
                disabled={frozen}
                onWrite={(text) => setSlots({ type, mode }, text)}
              />
            </span>
          </li>
        ))}
      </ul>
      <AddMode frozen={frozen ? 'frozen' : 'open'} onAdd={setSlots} />
    </Panel>
  );
}

interface ModeLineProps {
  readonly sheet: Sheet;
  readonly mode: Mode;
  readonly units: number;
  readonly onSlots: (names: Names, slots: string) => void;
}

function ModeLine({ sheet, mode, units, onSlots }: ModeLineProps) {
  const { type, mode: name } = mode;
  const frozen = !sheet.store.canEdit();
  const remove = () => carryOut(sheet, { name: 'set-mode', edits: [{ kind: 'remove-mode', type, mode: name }] });
  return (
    <li className={LINE}>
      <LineField
        name={TYPES_WORDS.modeOf(type)}
        value={name}
        disabled={frozen}
        onWrite={(text) => carryOut(sheet, renameMode(sheet.store.rig(), mode, text))}
      />
      <LineField
        name={TYPES_WORDS.slotsOf(type, name)}
        value={formatSlots(mode.footprints)}
        disabled={frozen}
        onWrite={(text) => onSlots(mode, text)}
      />
      <span className="text-right text-soft">{TYPES_WORDS.units(units)}</span>
      <LinkButton aria-label={TYPES_WORDS.remove(type, name)} disabled={frozen} onClick={remove}>
        {TYPES_WORDS.removeWord}
      </LinkButton>
    </li>
  );
}

const LINE = 'grid grid-cols-[1fr_5rem_3.75rem_3.5rem] items-center gap-2';

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
