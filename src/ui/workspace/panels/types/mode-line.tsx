import type { Mode } from '#engine/model/rig.ts';
import { TYPES_WORDS } from '#words/sheet.ts';
import type { Sheet } from '../../../grid/sheet.ts';
import { carryOut } from '../../../grid/sheet-actions.ts';
import { LineField } from '../../../kit/line-field.tsx';
import { LinkButton } from '../../../kit/link-button.tsx';
import { formatSlots, renameMode, type UsedMode } from './modes-in-use.ts';

export interface ModeLineProps {
  readonly sheet: Sheet;
  readonly mode: Mode;
  readonly units: number;
  readonly onSlots: (names: Pick<UsedMode, 'type' | 'mode'>, slots: string) => void;
}

/** One mode: its name, its slots (the library's, where it is a copy of one), its units. */
export function ModeLine({ sheet, mode, units, onSlots }: ModeLineProps) {
  const { type, mode: name, footprints, pin } = mode;
  const frozen = !sheet.store.canEdit();
  const remove = () => carryOut(sheet, { name: 'set-mode', edits: [{ kind: 'remove-mode', type, mode: name }] });
  return (
    <li className="grid grid-cols-[1fr_5rem_3.75rem_3.5rem] items-center gap-2">
      <LineField
        name={TYPES_WORDS.modeOf(type)}
        value={name}
        disabled={frozen}
        onWrite={(text) => carryOut(sheet, renameMode(sheet.store.rig(), mode, text))}
      />
      {pin === null ? (
        <LineField
          name={TYPES_WORDS.slotsOf(type, name)}
          value={formatSlots(footprints)}
          disabled={frozen}
          onWrite={(text) => onSlots(mode, text)}
        />
      ) : (
        <span className="px-2">{formatSlots(footprints)}</span>
      )}
      <span className="text-right text-soft">{TYPES_WORDS.units(units)}</span>
      <LinkButton aria-label={TYPES_WORDS.remove(type, name)} disabled={frozen} onClick={remove}>
        {TYPES_WORDS.removeWord}
      </LinkButton>
    </li>
  );
}
