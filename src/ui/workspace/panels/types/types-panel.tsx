import { useState } from 'react';
import { foldName } from '#engine/model/ids.ts';
import type { Mode } from '#engine/model/rig.ts';
import type { TypeSummary } from '#wire/library.ts';
import { TAKEN_WORDS } from '#words/rig-types.ts';
import { TYPES_WORDS } from '#words/sheet.ts';
import type { Sheet } from '../../../grid/sheet.ts';
import { carryOut } from '../../../grid/sheet-actions.ts';
import { Button } from '../../../kit/button.tsx';
import { LineField } from '../../../kit/line-field.tsx';
import { Message } from '../../../kit/message.tsx';
import { useRigCrew } from '../../../live/open-rig.tsx';
import { useCalmRig } from '../../../live/use-calm-rig.ts';
import { Panel } from '../../panel.tsx';
import { AddMode } from './add-mode.tsx';
import { ModeLine } from './mode-line.tsx';
import { byType, modesInUse, parseSlots, renameType, type UsedMode } from './modes-in-use.ts';
import { TakeTypeDialog } from './take-type-dialog.tsx';
import { TakenFrom } from './taken-from.tsx';
import { TypePicker } from './type-picker.tsx';
import { UnknownModes } from './unknown-modes.tsx';

export interface TypesPanelProps {
  readonly sheet: Sheet;
  readonly onClose: () => void;
}

/** A type of the rig (null: one it has not had) that is being looked for in the library, or is about to be taken from it. */
interface Step {
  readonly type: string | null;
  readonly typeId: string | undefined;
}

type Names = Pick<UsedMode, 'type' | 'mode'>;

/** The types in use: name, modes, the slots of each break, and the copies of the library they are. */
export function TypesPanel({ sheet, onClose }: TypesPanelProps) {
  const { store } = sheet;
  const rig = useCalmRig(store);
  const crewId = useRigCrew();
  const [step, setStep] = useState<Step>();
  const [trouble, setTrouble] = useState<string>();
  const { known, unknown, units } = modesInUse(rig);
  const frozen = !store.canEdit();
  const setSlots = ({ type, mode }: Names, text: string) => {
    const footprints = parseSlots(text);
    setTrouble(footprints === undefined ? TYPES_WORDS.badSlots : undefined);
    if (footprints) carryOut(sheet, { name: 'set-mode', edits: [{ kind: 'set-mode', type, mode, footprints }] });
  };
  const renameWhole = (modes: readonly Mode[], type: string) => {
    setTrouble(foldName(type) === '' ? TYPES_WORDS.noName : undefined);
    if (foldName(type) !== '') carryOut(sheet, renameType(rig, modes, type));
  };
  const find = (type: string | null) => setStep({ type, typeId: undefined });
  const leave = () => setStep(undefined);
  if (crewId !== undefined && step !== undefined && step.typeId === undefined) {
    const pick = ({ id }: TypeSummary) => setStep({ type: step.type, typeId: id });
    return (
      <Panel title={TYPES_WORDS.title} onClose={onClose}>
        <TypePicker crewId={crewId} type={step.type} onPick={pick} onLeave={leave} />
      </Panel>
    );
  }
  return (
    <>
      <Panel title={TYPES_WORDS.title} about={TYPES_WORDS.about} onClose={onClose}>
        {trouble === undefined ? null : <Message severity="blocker" said={{ what: trouble }} />}
        {frozen ? null : (
          <div>
            <Button look="main" disabled={crewId === undefined} onClick={() => find(null)}>
              {TAKEN_WORDS.new}
            </Button>
          </div>
        )}
        {known.length === 0 ? <p>{TYPES_WORDS.none}</p> : null}
        <ul className="flex flex-col gap-5">
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
                <TakenFrom
                  store={store}
                  modes={modes}
                  crewId={crewId}
                  onFind={() => find(type)}
                  onTake={(typeId) => setStep({ type, typeId })}
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
        <UnknownModes
          unknown={unknown}
          units={units}
          frozen={frozen ? 'frozen' : 'open'}
          onSlots={setSlots}
          onFind={find}
        />
        <AddMode frozen={frozen ? 'frozen' : 'open'} onAdd={setSlots} />
      </Panel>
      {step?.typeId === undefined || crewId === undefined ? null : (
        <TakeTypeDialog sheet={sheet} crewId={crewId} typeId={step.typeId} type={step.type} onClose={leave} />
      )}
    </>
  );
}
