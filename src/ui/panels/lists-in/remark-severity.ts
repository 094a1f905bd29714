import type { RemarkCode } from '#engine/list/read-list.ts';
import type { Severity } from '#engine/model/finding.ts';

/** What a remark about a line calls for: a caution wants a look before the list comes in, a note only tells what was done. */
export const REMARK_SEVERITY: Readonly<Record<RemarkCode, Exclude<Severity, 'blocker'>>> = {
  unreadable: 'caution',
  'kept-in-notes': 'caution',
  'not-taken': 'caution',
  'too-long': 'caution',
  expanded: 'note',
  'quantity-differs': 'caution',
  'unit-not-counted': 'caution',
  'channel-shared': 'note',
  'address-shared': 'note',
  'address-not-counted': 'caution',
  'next-universe': 'caution',
  'range-differs': 'caution',
  'mode-split': 'caution',
  'zero-restored': 'note',
  'universe-differs': 'caution',
  'no-universe': 'caution',
  'footprint-from-words': 'note',
};
