import type { LibraryRevision } from '#engine/type/pin.ts';
import { footprintsOfMode } from '#engine/type/slots-of.ts';
import { modeWord } from '#words/library.ts';
import { TAKE_WORDS } from '#words/rig-types.ts';
import { BareSelect } from '../../../kit/select.tsx';
import { Table } from '../../../kit/table.tsx';
import { TextField } from '../../../kit/text-field.tsx';
import type { Choice } from './taking.ts';

export interface ModeChoicesProps {
  /** `new`: the rig has not had the type; it is asked what to call it and which modes it needs. */
  readonly kind: 'new' | 'known';
  readonly name: string;
  readonly onName: (name: string) => void;
  readonly revision: LibraryRevision;
  readonly choices: readonly Choice[];
  readonly onChoose: (choices: readonly Choice[]) => void;
}

/** Which modes are copied, and which of the rig's they are. */
export function ModeChoices({ kind, name, onName, revision, choices, onChoose }: ModeChoicesProps) {
  const modes = revision.type.modes.map((mode) => {
    const footprints = footprintsOfMode(revision.type, mode);
    return { value: mode.name, label: modeWord({ name: mode.name, footprints, firmware: mode.firmware }) };
  });
  const choose = (mode: string, is: string) =>
    onChoose(choices.map((each) => (each.mode === mode ? { ...each, is, by: 'person' } : each)));
  if (kind === 'new') {
    return (
      <>
        <TextField label={TAKE_WORDS.name} value={name} onText={onName} />
        <fieldset className="flex flex-col gap-1">
          <legend className="mb-1">{TAKE_WORDS.choose}</legend>
          {choices.map(({ mode, is }) => (
            <label key={mode} className="flex min-h-control items-center gap-2">
              <input
                type="checkbox"
                checked={is !== ''}
                onChange={(event) => choose(mode, event.currentTarget.checked ? mode : '')}
              />
              {modes.find(({ value }) => value === mode)?.label}
            </label>
          ))}
        </fieldset>
      </>
    );
  }
  const options = [{ value: '', label: TAKE_WORDS.leave }, ...modes];
  return (
    <>
      <p>{TAKE_WORDS.which}</p>
      <Table
        caption={TAKE_WORDS.which}
        rowName="mode"
        keyOf={({ mode }: Choice) => mode}
        rows={choices}
        columns={[
          {
            key: 'mode',
            heading: TAKE_WORDS.inRig,
            cell: ({ mode, footprints }) => TAKE_WORDS.modeOf(mode, footprints),
          },
          {
            key: 'is',
            heading: TAKE_WORDS.inLibrary,
            cell: ({ mode, footprints, is }) => (
              <BareSelect
                name={TAKE_WORDS.modeOf(mode, footprints)}
                choices={options}
                value={is}
                onChoose={(next) => choose(mode, next)}
              />
            ),
          },
          {
            key: 'by',
            heading: TAKE_WORDS.because,
            wideOnly: true,
            cell: ({ by }) => (by === 'person' ? TAKE_WORDS.chosen : TAKE_WORDS.matched(by)),
          },
        ]}
      />
    </>
  );
}
