import { CONTINUOUS_SHARE, type LoadRules, NOMINAL_VOLTAGES } from './load-rules.ts';

/** Rules as they were kept somewhere; undefined for anything else that stands there. */
export function readLoadRules(kept: unknown): LoadRules | undefined {
  if (typeof kept !== 'object' || kept === null || !('volts' in kept) || !('share' in kept)) return undefined;
  const volts = NOMINAL_VOLTAGES.find((each) => each === kept.volts);
  if (volts === undefined || (kept.share !== null && kept.share !== CONTINUOUS_SHARE)) return undefined;
  return { volts, share: kept.share };
}
