import type { Unit } from '../address/unit.ts';
import type { Finding } from '../model/finding.ts';
import { makeFinding } from './make-finding.ts';

/** One channel on fixtures of unlike type or mode; `units` share it. [CH11] */
export function channelOnUnlike(channel: number, units: readonly Unit[]): Finding | undefined {
  const mode = units[0]?.modeKey;
  if (units.every((unit) => unit.modeKey === mode)) return undefined;
  return makeFinding(
    { rule: 'channel-on-unlike', channel },
    units.map((unit) => unit.fixture.id),
  );
}
