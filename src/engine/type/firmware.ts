/** Whether a firmware is one of those written down; `unknown` when one of the two cannot be compared. */
export type FirmwareFit = 'yes' | 'no' | 'unknown';

/**
 * Whether the firmware a unit was found with is among `versions`, each as a manual writes it: `1.4`, `1.x`, `1.4+`, `from
 * 1.4`, `up to 2.0`, `1.2 - 1.5`. No versions: any. Trailing zeros and a leading `v` do not count. Source: common practice.
 */
export function firmwareFits(found: string, versions: readonly string[]): FirmwareFit {
  const stated = versions.filter((version) => version.trim() !== '');
  if (stated.length === 0) return 'yes';
  const fits = stated.map((version) => fitOf(tidy(found), tidy(version)));
  if (fits.includes('yes')) return 'yes';
  return fits.includes('unknown') ? 'unknown' : 'no';
}

/** Whether two firmware versions are the same one, however they are spelled. */
export const sameFirmware = (a: string, b: string): boolean => fitOf(tidy(a), tidy(b)) === 'yes';

/** Equal for two spellings of one version. */
export const firmwareKey = (text: string): string => tidy(text).replace(/^(\d+(?:\.\d+)*?)(?:\.0+)+$/, '$1');

const tidy = (text: string) =>
  text
    .normalize('NFC')
    .toLowerCase()
    .replace(/\s+/g, ' ')
    .trim()
    .replace(/^(?:firmware|version|ver\.?|fw|v\.?) ?(?=\d)/, '');

type Version = readonly number[];

const NUMBER = '(\\d{1,6}(?:\\.\\d{1,6}){0,4})';
const FROM = new RegExp(`^(?:from|since|>=|≥) ?v?${NUMBER}$|^${NUMBER} ?(?:\\+|(?:and|or) (?:later|newer|up|above))$`);
const UP_TO = new RegExp(`^(?:up to|until|<=|≤) ?v?${NUMBER}$`);
const BEFORE = new RegExp(`^(?:before|<) ?v?${NUMBER}$`);
const AFTER = new RegExp(`^(?:after|>) ?v?${NUMBER}$`);
const BETWEEN = new RegExp(`^v?${NUMBER} ?(?:-|–|to|\\.\\.) ?v?${NUMBER}$`);
const ANY_WITHIN = /^(\d{1,6}(?:\.\d{1,6}){0,3})\.[x*]$/;

function fitOf(found: string, wanted: string): FirmwareFit {
  if (found === wanted) return 'yes';
  const version = readVersion(found);
  const test = readTest(wanted);
  if (version === undefined && test === undefined) return 'no';
  if (version === undefined || test === undefined) return 'unknown';
  return test(version) ? 'yes' : 'no';
}

/** What a written version asks of one; undefined when it is text that only equals itself. */
function readTest(wanted: string): ((version: Version) => boolean) | undefined {
  const exact = readVersion(wanted);
  if (exact !== undefined) return (version) => compare(version, exact) === 0;
  const within = readVersion(ANY_WITHIN.exec(wanted)?.[1]);
  if (within !== undefined) return (version) => within.every((part, at) => (version[at] ?? 0) === part);
  const [, low, high] = BETWEEN.exec(wanted) ?? [];
  const ends = [readVersion(low), readVersion(high)] as const;
  if (ends[0] !== undefined && ends[1] !== undefined) {
    const [first, last] = ends;
    return (version) => compare(version, first) >= 0 && compare(version, last) <= 0;
  }
  const from = FROM.exec(wanted);
  return (
    bounded(from?.[1] ?? from?.[2], (order) => order >= 0) ??
    bounded(UP_TO.exec(wanted)?.[1], (order) => order <= 0) ??
    bounded(BEFORE.exec(wanted)?.[1], (order) => order < 0) ??
    bounded(AFTER.exec(wanted)?.[1], (order) => order > 0)
  );
}

function bounded(text: string | undefined, holds: (order: number) => boolean) {
  const bound = readVersion(text);
  return bound === undefined ? undefined : (version: Version) => holds(compare(version, bound));
}

function readVersion(text: string | undefined): Version | undefined {
  return text !== undefined && /^\d{1,6}(\.\d{1,6}){0,4}$/.test(text) ? text.split('.').map(Number) : undefined;
}

function compare(a: Version, b: Version): number {
  for (let at = 0; at < Math.max(a.length, b.length); at++) {
    const order = (a[at] ?? 0) - (b[at] ?? 0);
    if (order !== 0) return order;
  }
  return 0;
}
