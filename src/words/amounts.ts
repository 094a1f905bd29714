const number = (value: number, digits: number) =>
  value.toLocaleString('en-GB', { minimumFractionDigits: digits, maximumFractionDigits: digits });

/** `16 A`, `4.3 A`: to the tenth, and without one that is 0. */
export const ampsText = (amps: number): string => `${shortest(amps)} A`;

export const wattsText = (watts: number): string => `${number(watts, 0)} W`;

export const voltAmpsText = (voltAmps: number): string => `${number(voltAmps, 0)} VA`;

export const voltsText = (volts: number): string => `${number(volts, 0)} V`;

export const kilogramsText = (kilograms: number): string => `${shortest(kilograms)} kg`;

/** A share as a percentage: `80 %`. */
export const percentText = (share: number): string => `${number(share * 100, 0)} %`;

/** A tenth can hide that a load is over its limit: a hundredth is shown where it would. */
function shortest(value: number): string {
  const tenths = Math.round(value * 10) / 10;
  return Number.isInteger(value)
    ? number(value, 0)
    : number(value, Math.abs(tenths - value) < 0.005 || value >= 100 ? 1 : 2);
}
