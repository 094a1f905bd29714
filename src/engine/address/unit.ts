import type { Fixture } from '../model/fixture.ts';
import { type ModeId, SEPARATOR } from '../model/ids.ts';
import type { Mode } from '../model/rig.ts';

/**
 * What an index keeps of one fixture: its row, and what the rig makes of its type and mode. The index changes it in place,
 * so that it can stand in several lists; to everyone else it is read only.
 */
export interface Unit {
  fixture: Fixture;
  modeKey: ModeId;
  /** The mode as the rig knows it. */
  mode: Mode | undefined;
  /** Whether the rig knows any mode of this type. */
  typeKnown: boolean;
}

/** The folded type name within the key of a mode. */
export function typeKeyOf(mode: ModeId): string {
  return mode.slice(0, mode.indexOf(SEPARATOR));
}

export function sameAddresses(a: Fixture, b: Fixture): boolean {
  const left = a.addresses;
  const right = b.addresses;
  if (left === right) return true;
  if (left.length !== right.length) return false;
  for (let i = 0; i < left.length; i++) if (left[i] !== right[i]) return false;
  return true;
}

/** What decides whether units act as one. */
export type Sharer = Pick<Unit, 'fixture' | 'modeKey'>;

/** Units that act as one: one channel, one mode, the same start addresses. Source: common practice. [CH2] */
export function actAsOne(a: Sharer, b: Sharer): boolean {
  return (
    a.fixture.channel !== null &&
    a.fixture.channel === b.fixture.channel &&
    a.modeKey === b.modeKey &&
    sameAddresses(a.fixture, b.fixture)
  );
}
