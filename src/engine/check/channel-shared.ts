import { sameAddresses, type Unit } from '../address/unit.ts';
import type { Finding } from '../model/finding.ts';
import { makeFinding } from './make-finding.ts';

/** One channel on like fixtures at unlike addresses: legal, often meant, worth knowing; `units` share it and are alike. [CH12] */
export function channelShared(channel: number, units: readonly Unit[]): Finding | undefined {
  const first = units[0];
  if (first === undefined || units.every((unit) => sameAddresses(unit.fixture, first.fixture))) return undefined;
  return makeFinding(
    { rule: 'channel-shared', channel },
    units.map((unit) => unit.fixture.id),
  );
}
