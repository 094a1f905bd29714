import { getRow, rowsOf } from '#base/table.ts';
import { modeOf } from '../model/find-mode.ts';
import type { Fixture } from '../model/fixture.ts';
import { foldName } from '../model/ids.ts';
import { compareNatural } from '../model/natural-order.ts';
import type { Rig } from '../model/rig.ts';
import { rowsInOrder } from '../model/row-order.ts';
import { firmwareFits, sameFirmware } from './firmware.ts';
import { pinnedMode } from './pin.ts';

/** The units of one type of a rig by what firmware they have; each list in the order of the rows. */
export interface TypeFirmware {
  readonly type: string;
  /** Empty when nobody said what is wanted. */
  readonly wanted: string;
  readonly units: number;
  /** Found with another than is wanted; nobody when nothing is. */
  readonly others: readonly Fixture[];
  /** Nobody wrote down what they have. */
  readonly unknown: readonly Fixture[];
  /** Found with one that does not have their mode. */
  readonly lacking: readonly Fixture[];
}

/** The firmware of every type units of a rig are of: those with something to see to first, then by name. [FW2] */
export function firmwareOfTypes(rig: Rig): readonly TypeFirmware[] {
  const byType = new Map<string, Fixture[]>();
  for (const fixture of rowsInOrder(rig)) {
    const key = foldName(fixture.type);
    if (key === '') continue;
    const units = byType.get(key);
    if (units === undefined) byType.set(key, [fixture]);
    else units.push(fixture);
  }
  const spelled = new Map([...rowsOf(rig.modes)].map(({ type }) => [foldName(type), type]));
  return [...byType]
    .map(([key, units]) => ofType(rig, spelled.get(key) ?? units[0]?.type ?? '', units))
    .sort((a, b) => Number(isRight(a)) - Number(isRight(b)) || compareNatural(a.type, b.type));
}

const isRight = ({ others, lacking }: TypeFirmware) => others.length + lacking.length === 0;

function ofType(rig: Rig, type: string, units: readonly Fixture[]): TypeFirmware {
  const wanted = getRow(rig.wanted, foldName(type))?.version ?? '';
  const looked = units.filter(({ firmware }) => firmware !== '');
  return {
    type,
    wanted,
    units: units.length,
    others: wanted === '' ? [] : looked.filter(({ firmware }) => !sameFirmware(firmware, wanted)),
    unknown: units.filter(({ firmware }) => firmware === ''),
    lacking: looked.filter((fixture) => firmwareFits(fixture.firmware, needsOf(rig, fixture)) === 'no'),
  };
}

function needsOf(rig: Rig, fixture: Fixture): readonly string[] {
  const pin = modeOf(rig, fixture)?.pin ?? null;
  return (pin === null ? undefined : pinnedMode(pin)?.firmware) ?? [];
}
