import { useCallback, useSyncExternalStore } from 'react';

/** A screen on which the sheet is one unit at a time. */
export const PHONE = '(max-width: 40rem)';

/** Whether a media query holds now. */
export function useMedia(query: string): boolean {
  const subscribe = useCallback(
    (listen: () => void) => {
      const media = window.matchMedia(query);
      media.addEventListener('change', listen);
      return () => media.removeEventListener('change', listen);
    },
    [query],
  );
  return useSyncExternalStore(subscribe, () => window.matchMedia(query).matches);
}
