import type { Fixture } from '#engine/model/fixture.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import { firmwareOfTypes, type TypeFirmware } from '#engine/type/firmware-of-types.ts';
import { unitName } from '#words/findings.ts';
import { FIRMWARE_WORDS } from '#words/rig-types.ts';
import type { Sheet } from '../../grid/sheet.ts';
import { carryOut } from '../../grid/sheet-actions.ts';
import { LineField } from '../../kit/line-field.tsx';
import { LinkButton } from '../../kit/link-button.tsx';
import { useCalmRig } from '../../live/use-calm-rig.ts';
import { Panel } from '../panel.tsx';

export interface FirmwarePanelProps {
  readonly sheet: Sheet;
  readonly onGo: (fixture: FixtureId) => void;
  readonly onClose: () => void;
}

/** What firmware the units of each type are meant to have, and which have another, lack their mode, or were not looked at. */
export function FirmwarePanel({ sheet, onGo, onClose }: FirmwarePanelProps) {
  const types = firmwareOfTypes(useCalmRig(sheet.store));
  return (
    <Panel title={FIRMWARE_WORDS.title} about={FIRMWARE_WORDS.about} onClose={onClose}>
      {types.length === 0 ? <p>{FIRMWARE_WORDS.none}</p> : null}
      <ul className="flex flex-col gap-5">
        {types.map((type) => (
          <li key={type.type} className="flex flex-col gap-1">
            <OfType sheet={sheet} type={type} onGo={onGo} />
          </li>
        ))}
      </ul>
    </Panel>
  );
}

function OfType({ sheet, type: { type, wanted, units, ...lists }, onGo }: OfTypeProps) {
  const write = (text: string) =>
    carryOut(sheet, { name: 'set-wanted', edits: [{ kind: 'set-wanted', type, version: text.trim() }] });
  const { others, unknown, lacking } = lists;
  const right = wanted !== '' && others.length === 0 && unknown.length < units;
  return (
    <>
      <h3 className="flex flex-wrap items-baseline gap-x-3">
        <span className="flex-1">{type}</span>
        <span className="text-soft">{FIRMWARE_WORDS.units(units)}</span>
      </h3>
      <div className="w-56 max-w-full">
        <LineField
          name={FIRMWARE_WORDS.wanted(type)}
          value={wanted}
          placeholder={FIRMWARE_WORDS.wantedHint}
          disabled={!sheet.store.canEdit()}
          onWrite={write}
        />
      </div>
      <Units title={FIRMWARE_WORDS.lacks(lacking.length)} units={lacking} onGo={onGo} />
      <Units title={FIRMWARE_WORDS.others(others.length)} units={others} onGo={onGo} />
      {right ? <p className="text-soft">{FIRMWARE_WORDS.right}</p> : null}
      {wanted === '' && lacking.length === 0 ? null : (
        <Units title={FIRMWARE_WORDS.unknown(unknown.length)} units={unknown} onGo={onGo} />
      )}
    </>
  );
}

interface OfTypeProps extends Pick<FirmwarePanelProps, 'sheet' | 'onGo'> {
  readonly type: TypeFirmware;
}

interface UnitsProps extends Pick<FirmwarePanelProps, 'onGo'> {
  readonly title: string;
  readonly units: readonly Fixture[];
}

/** Units a list shows before it is opened: the rest stand in the sheet. */
const MOST = 200;

function Units({ title, units, onGo }: UnitsProps) {
  if (units.length === 0) return null;
  return (
    <section>
      <p>{title}</p>
      <ul className="pl-5">
        {units.slice(0, MOST).map((unit) => (
          <li key={unit.id} className="flex gap-x-3">
            <LinkButton className="flex-1" onClick={() => onGo(unit.id)}>
              {unitName(unit)}
            </LinkButton>
            <span className="text-soft">{FIRMWARE_WORDS.found(unit.firmware)}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}
