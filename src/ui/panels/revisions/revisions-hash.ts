import { useMemo, useSyncExternalStore } from 'react';

/** One side of a comparison: a revision by its number, or the rig as it is edited. */
export type Side = number | 'now';

/** What the page shows: the part of its address behind the `#`, so that it can be sent to somebody. */
export type RevisionsPlace =
  | { readonly kind: 'list' }
  | { readonly kind: 'one'; readonly number: number }
  | { readonly kind: 'pair'; readonly before: Side; readonly after: Side };

const LIST: RevisionsPlace = { kind: 'list' };

/** Reads `#3` and `#3..now`; anything else is the list. */
export function readPlace(hash: string): RevisionsPlace {
  const [first = '', second, ...more] = hash.replace(/^#/, '').split('..');
  if (more.length > 0) return LIST;
  const before = readSide(first);
  if (second === undefined) return typeof before === 'number' ? { kind: 'one', number: before } : LIST;
  const after = readSide(second);
  return before === undefined || after === undefined ? LIST : { kind: 'pair', before, after };
}

function readSide(text: string): Side | undefined {
  if (text === 'now') return 'now';
  return /^[1-9]\d{0,6}$/.test(text) ? Number(text) : undefined;
}

/** The inverse of `readPlace`. */
export function spellPlace(place: RevisionsPlace): string {
  if (place.kind === 'list') return '';
  return place.kind === 'one' ? `#${place.number}` : `#${place.before}..${place.after}`;
}

function subscribe(listen: () => void): () => void {
  window.addEventListener('hashchange', listen);
  window.addEventListener('popstate', listen);
  return () => {
    window.removeEventListener('hashchange', listen);
    window.removeEventListener('popstate', listen);
  };
}

/** The place in the address. */
export function useRevisionsPlace(): RevisionsPlace {
  const hash = useSyncExternalStore(subscribe, () => window.location.hash);
  return useMemo(() => readPlace(hash), [hash]);
}

/** Goes to another place without a step for the browser's back button: a choice of what is compared. */
export function replacePlace(place: RevisionsPlace): void {
  const { pathname, search } = window.location;
  window.history.replaceState(null, '', pathname + search + spellPlace(place));
  window.dispatchEvent(new HashChangeEvent('hashchange'));
}
