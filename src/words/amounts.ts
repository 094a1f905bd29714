const number = (value: number, digits: number) =>
  value.toLocaleString('en-GB', { minimumFractionDigits: digits, maximumFractionDigits: digits });

/** `16 A`, `4.35 A`, `151.8 A`. */
export const ampsText = (amps: number): string => `${shortest(amps)} A`;

export const wattsText = (watts: number): string => `${number(watts, 0)} W`;

export const voltAmpsText = (voltAmps: number): string => `${number(voltAmps, 0)} VA`;

export const voltsText = (volts: number): string => `${number(volts, 0)} V`;

export const kilogramsText = (kilograms: number): string => `${shortest(kilograms)} kg`;

/** A share as a percentage: `80 %`. */
export const percentText = (share: number): string => `${number(share * 100, 0)} %`;

/** To the hundredth, above a hundred to the tenth; rounded as findings are, so that both say the same. */
function shortest(value: number): string {
  const hundredths = Math.round(value * 100) / 100;
  if (Number.isInteger(hundredths)) return number(hundredths, 0);
  const isTenth = Math.abs(hundredths * 10 - Math.round(hundredths * 10)) < 1e-9;
  return number(hundredths, isTenth || hundredths >= 100 ? 1 : 2);
}
