import type { Finding } from '#engine/model/finding.ts';
import { FREEZE_WORDS } from '#words/revisions.ts';
import type { SaveStatus } from '../../live/link.ts';

export interface Freezing {
  /** Where the edits made here stand; undefined until the rig is open. */
  readonly status: SaveStatus['state'] | undefined;
  readonly blockers: readonly Finding[];
  /** The keys of those that somebody accepts. */
  readonly ticked: ReadonlySet<string>;
  /** The name of that person. */
  readonly by: string;
}

/** Why a rig cannot be frozen yet, in a sentence; undefined when it can. */
export function missingFor({ status, blockers, ticked, by }: Freezing): string | undefined {
  const { missing } = FREEZE_WORDS;
  if (status === 'refused') return missing.refused;
  if (status === 'on-device') return missing.onDevice;
  if (status !== 'saved') return missing.unsaved;
  const open = blockers.filter(({ key }) => !ticked.has(key)).length;
  if (open > 0) return missing.unticked(open);
  return blockers.length > 0 && by.trim() === '' ? missing.unnamed : undefined;
}
