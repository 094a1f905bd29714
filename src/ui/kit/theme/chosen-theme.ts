export const THEMES = ['device', 'day', 'dark'] as const;

/** `device` follows the device's own light or dark scheme. */
export type Theme = (typeof THEMES)[number];

// public/theme.js reads the same key before the first paint.
const KEY = 'rigledger-theme';
const listeners = new Set<() => void>();

/** What this page shows now. */
export function shownTheme(): Theme {
  const set = document.documentElement.dataset.theme;
  return set === 'day' || set === 'dark' ? set : 'device';
}

/** Shows a theme and remembers it on this device. Where storage is switched off it holds until the page is closed. */
export function chooseTheme(theme: Theme): void {
  if (theme === 'device') delete document.documentElement.dataset.theme;
  else document.documentElement.dataset.theme = theme;
  try {
    localStorage.setItem(KEY, theme);
  } catch {
    // Storage is switched off or full: the choice is shown all the same.
  }
  for (const listener of listeners) listener();
}

export function subscribeTheme(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}
