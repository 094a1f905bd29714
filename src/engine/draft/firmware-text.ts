import { cellText, oneLine } from './cell-text.ts';

/** Firmware versions as the cell of a draft says them, separated by commas. */
export const firmwareText = (versions: readonly string[]): string => cellText(versions.join(', '));

export const readFirmware = (text: string): readonly string[] =>
  text
    .split(',')
    .map(oneLine)
    .filter((version) => version !== '');
