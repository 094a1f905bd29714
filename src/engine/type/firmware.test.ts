import { describe, expect, it } from 'vitest';
import { type FirmwareFit, firmwareFits, sameFirmware } from './firmware.ts';

// How manuals write versions down: common practice.
const ROWS: readonly [found: string, versions: readonly string[], fit: FirmwareFit][] = [
  ['1.4', [], 'yes'],
  ['1.4', ['1.4'], 'yes'],
  ['v1.4.0', ['1.4'], 'yes'],
  ['1.4', ['1.40'], 'no'],
  ['1.4', ['1.2', '1.4'], 'yes'],
  ['1.5', ['1.2', '1.4'], 'no'],
  ['1.10', ['1.9+'], 'yes'],
  ['1.8', ['1.9+'], 'no'],
  ['2.0', ['from 1.9'], 'yes'],
  ['2.0', ['1.9 and later'], 'yes'],
  ['1.8.9', ['≥ 1.9'], 'no'],
  ['1.9', ['up to 2.0'], 'yes'],
  ['2.0', ['before 2.0'], 'no'],
  ['2.0.1', ['> 2.0'], 'yes'],
  ['1.3', ['1.2 - 1.5'], 'yes'],
  ['1.6', ['1.2–1.5'], 'no'],
  ['1.7.3', ['1.x'], 'yes'],
  ['2.0', ['1.*'], 'no'],
  ['B7', ['B7'], 'yes'],
  ['b7', ['B7'], 'yes'],
  ['B8', ['B7'], 'no'],
  ['B8', ['1.4+'], 'unknown'],
  ['1.4', ['the red one'], 'unknown'],
  ['Firmware 2.1', ['V2.1'], 'yes'],
];

describe('firmware', () => {
  it.each(ROWS)('[FW1] %s among %j: %s', (found, versions, fit) => {
    expect(firmwareFits(found, versions)).toBe(fit);
  });

  it('[FW1] is the same however it is spelled', () => {
    expect(sameFirmware('V 1.2', '1.2.0')).toBe(true);
    expect(sameFirmware('1.2', '1.20')).toBe(false);
  });
});
