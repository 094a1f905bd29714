import type { Fixture } from '../model/fixture.ts';

/** Whether two rows of one id say the same in every cell. Fields that change most come first: most rows that differ are told by them. */
export function sameFixture(a: Fixture, b: Fixture): boolean {
  return (
    sameAddresses(a.addresses, b.addresses) &&
    a.channel === b.channel &&
    a.position === b.position &&
    a.unit === b.unit &&
    a.type === b.type &&
    a.mode === b.mode &&
    a.circuit === b.circuit &&
    a.purpose === b.purpose &&
    a.colour === b.colour &&
    a.notes === b.notes &&
    a.order === b.order &&
    a.firmware === b.firmware &&
    a.run === b.run &&
    a.along === b.along &&
    a.cable === b.cable &&
    a.lock === b.lock &&
    sameUnreadable(a.unreadable, b.unreadable)
  );
}

function sameAddresses(a: Fixture['addresses'], b: Fixture['addresses']): boolean {
  if (a === b) return true;
  if (a.length !== b.length) return false;
  for (let at = 0; at < a.length; at++) if (a[at] !== b[at]) return false;
  return true;
}

function sameUnreadable(a: Fixture['unreadable'], b: Fixture['unreadable']): boolean {
  if (a === b || (a.length === 0 && b.length === 0)) return true;
  // Both are in the order in which a row is read.
  return (
    a.length === b.length && a.every(({ field, value }, at) => field === b[at]?.field && Object.is(value, b[at]?.value))
  );
}
