import type { Field } from '#engine/model/field.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import { FIELD_WORDS } from '#words/findings.ts';
import { HISTORY_WORDS as words } from '#words/history.ts';
import { StayLink } from '../../kit/stay-link.tsx';
import { LINK_CLASSES } from '../../kit/text-link.tsx';
import { spellPlace } from '../history/history-place.ts';
import { rigAddress, rigPath } from './rig-address.ts';

export interface ToHistoryProps {
  readonly unit: FixtureId;
  /** Only of this cell. */
  readonly field?: Field | undefined;
}

/** The way from a unit of the rig that is open, or from one cell of it, to what was ever done to it. */
export function ToHistory({ unit, field }: ToHistoryProps) {
  const { rigId } = rigAddress(window.location.pathname);
  const href = `${rigPath(rigId, 'history')}${spellPlace({ unit, field: field ?? null })}`;
  return (
    <StayLink className={LINK_CLASSES} href={href}>
      {field === undefined ? words.ofUnit : words.ofCell(FIELD_WORDS[field])}
    </StayLink>
  );
}
