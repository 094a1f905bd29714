import { useMemo, useSyncExternalStore } from 'react';

// The number goes up when the shape of anything kept changes: what was kept before is then not found.
const PREFIX = 'rigledger-kept-1:';

/** Keeps an answer of the server on this device, so that a page can open without a network. */
export function keep(key: string, value: unknown): void {
  try {
    localStorage.setItem(PREFIX + key, JSON.stringify(value));
  } catch {
    // Storage is switched off or full: the page opens with a network only.
  }
}

/** Forgets everything kept: called when somebody signs out, since the next person at this device may be another. */
export function forgetKept(): void {
  try {
    for (const key of Object.keys(localStorage)) if (key.startsWith(PREFIX)) localStorage.removeItem(key);
  } catch {
    // Storage is switched off: nothing was kept.
  }
}

/**
 * What was kept under `key`, as `read` makes of it; undefined when nothing was, when `read` refuses it, and while a page
 * is rendered on the server. `read` must be the same function every time.
 */
export function useKept<T>(key: string | null, read: (value: unknown) => T | undefined): T | undefined {
  const text = useSyncExternalStore(
    subscribe,
    () => (key === null ? null : textAt(key)),
    () => null,
  );
  return useMemo(() => (text === null ? undefined : readText(text, read)), [text, read]);
}

function textAt(key: string): string | null {
  try {
    return localStorage.getItem(PREFIX + key);
  } catch {
    // Storage is switched off: nothing was kept.
    return null;
  }
}

function readText<T>(text: string, read: (value: unknown) => T | undefined): T | undefined {
  try {
    return read(JSON.parse(text));
  } catch {
    // Somebody else wrote here: as good as not kept.
    return undefined;
  }
}

function subscribe(listener: () => void): () => void {
  window.addEventListener('storage', listener);
  return () => window.removeEventListener('storage', listener);
}
