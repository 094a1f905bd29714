import { foldName, type ModeId } from '#engine/model/ids.ts';
import { TAKEN_WORDS } from '#words/rig-types.ts';
import { TYPES_WORDS } from '#words/sheet.ts';
import { LineField } from '../../../kit/line-field.tsx';
import { LinkButton } from '../../../kit/link-button.tsx';
import type { UsedMode } from './modes-in-use.ts';

export interface UnknownModesProps {
  readonly unknown: readonly UsedMode[];
  readonly units: ReadonlyMap<ModeId, number>;
  readonly frozen: 'frozen' | 'open';
  readonly onSlots: (names: Pick<UsedMode, 'type' | 'mode'>, slots: string) => void;
  readonly onFind: (type: string) => void;
}

/** What units are set to and the rig does not know: to be found in the library, or said in slots. */
export function UnknownModes({ unknown, units, frozen, onSlots, onFind }: UnknownModesProps) {
  if (unknown.length === 0) return null;
  return (
    <section className="flex flex-col gap-1">
      <h3>{TYPES_WORDS.unknown}</h3>
      <ul className="flex flex-col gap-1">
        {unknown.map(({ id, type, mode }, at) => (
          <li key={id} className="flex flex-wrap items-center gap-x-3 gap-y-1">
            <span className="flex-1">{mode === '' ? type : `${type}, ${mode}`}</span>
            <span className="text-soft">{TYPES_WORDS.units(units.get(id) ?? 0)}</span>
            {frozen === 'open' && isFirstOfType(unknown, at) ? (
              <LinkButton onClick={() => onFind(type)}>{TAKEN_WORDS.find}</LinkButton>
            ) : null}
            <span className="w-24">
              <LineField
                name={TYPES_WORDS.describe(type, mode)}
                value=""
                placeholder={TYPES_WORDS.slots}
                disabled={frozen === 'frozen'}
                onWrite={(text) => onSlots({ type, mode }, text)}
              />
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Modes of one type stand together: the type is looked for once. */
const isFirstOfType = (unknown: readonly UsedMode[], at: number) =>
  foldName(unknown[at - 1]?.type ?? '') !== foldName(unknown[at]?.type ?? '') || at === 0;
