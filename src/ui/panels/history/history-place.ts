import { useEffect, useState } from 'react';
import { FIELDS, type Field } from '#engine/model/field.ts';
import { type FixtureId, isId } from '#engine/model/ids.ts';

/** What the page of a rig's history shows: the part of its address behind the `#`, so that it can be linked to and sent to somebody. */
export interface HistoryPlace {
  /** Only this unit. */
  readonly unit: FixtureId | null;
  /** Only this cell. */
  readonly field: Field | null;
  /** The rig as it was after this step of its log; null: the timeline. */
  readonly moment: number | null;
}

/** Reads `#unit=a&field=address` and `#moment=12`; what makes no sense is passed over. */
export function readPlace(hash: string): HistoryPlace {
  const said = new URLSearchParams(hash.replace(/^#/, ''));
  const unit = said.get('unit') ?? '';
  const moment = said.get('moment') ?? '';
  return {
    unit: isId(unit) ? (unit as FixtureId) : null,
    field: FIELDS.find((each) => each === said.get('field')) ?? null,
    moment: /^[1-9]\d{0,14}$/.test(moment) ? Number(moment) : null,
  };
}

/** The inverse of `readPlace`. */
export function spellPlace({ unit, field, moment }: Partial<HistoryPlace>): string {
  const said = new URLSearchParams();
  if (unit) said.set('unit', unit);
  if (field) said.set('field', field);
  if (moment) said.set('moment', String(moment));
  return said.size === 0 ? '' : `#${said}`;
}

/** The place in the address, and the way to another. To a moment and back is a step of the browser, a filter is none. */
export function useHistoryPlace(): readonly [HistoryPlace, (place: HistoryPlace) => void] {
  const [place, setPlace] = useState(() => readPlace(location.hash));
  useEffect(() => {
    const follow = () => setPlace(readPlace(location.hash));
    window.addEventListener('hashchange', follow);
    window.addEventListener('popstate', follow);
    return () => {
      window.removeEventListener('hashchange', follow);
      window.removeEventListener('popstate', follow);
    };
  }, []);
  const go = (next: HistoryPlace) => {
    const how = next.moment === place.moment ? 'replaceState' : 'pushState';
    setPlace(next);
    window.history[how](null, '', location.pathname + location.search + spellPlace(next));
  };
  return [place, go];
}
