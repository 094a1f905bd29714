import { useSyncExternalStore } from 'react';
import { THEME_WORDS } from '#words/screens.ts';
import { Select } from '../select.tsx';
import { chooseTheme, shownTheme, subscribeTheme, THEMES, type Theme } from './chosen-theme.ts';

const CHOICES = THEMES.map((theme) => ({ value: theme, label: THEME_WORDS.names[theme] }));

/** Chooses the theme of this device. */
export function ThemeSelect() {
  const theme = useSyncExternalStore<Theme>(subscribeTheme, shownTheme, () => 'device');
  return (
    <Select label={THEME_WORDS.label} hint={THEME_WORDS.hint} choices={CHOICES} value={theme} onChoose={chooseTheme} />
  );
}
