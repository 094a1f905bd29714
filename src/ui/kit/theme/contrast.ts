/**
 * Contrast of two opaque colours `#rrggbb`, from 1 to 21. Source: WCAG 2.1, definitions of contrast ratio and relative
 * luminance.
 */
export function contrast(a: string, b: string): number {
  const [high, low] = [luminance(a), luminance(b)].sort((x, y) => y - x) as [number, number];
  return (high + 0.05) / (low + 0.05);
}

function luminance(colour: string): number {
  const match = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(colour);
  if (!match) throw new Error(`not an opaque colour: ${colour}`);
  const [red, green, blue] = match.slice(1).map((hex) => linear(Number.parseInt(hex, 16) / 255)) as [
    number,
    number,
    number,
  ];
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

const linear = (part: number) => (part <= 0.03928 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4);
