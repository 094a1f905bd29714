/** The fields of a packet in order: what each is called, and how many bytes it takes. */
export type Layout = readonly (readonly [field: string, bytes: number])[];

/** What stands in a field: a number, high byte first, or bytes with zeros behind them. */
export type FieldValue = number | Uint8Array;

export const lengthOf = (layout: Layout): number => layout.reduce((sum, [, bytes]) => sum + bytes, 0);

/**
 * The bytes of a packet. Fields without a value are zero. Throws for a value that its field does not hold, and for one without a field:
 * packets are made by us, and a wrong one is a bug.
 */
export function pack(layout: Layout, values: Readonly<Record<string, FieldValue>>): Uint8Array {
  const packet = new Uint8Array(lengthOf(layout));
  const left = new Set(Object.keys(values));
  let at = 0;
  for (const [field, bytes] of layout) {
    packet.set(left.delete(field) ? bytesOf(values[field] ?? 0, field, bytes) : [], at);
    at += bytes;
  }
  if (left.size > 0) throw new Error(`no such field: ${[...left].join(', ')}`);
  return packet;
}

function bytesOf(value: FieldValue, field: string, bytes: number): ArrayLike<number> {
  if (typeof value !== 'number') {
    if (value.length > bytes) throw new Error(`${field} has ${bytes} bytes, not ${value.length}`);
    return value;
  }
  if (!Number.isInteger(value) || value < 0 || value >= 256 ** bytes)
    throw new Error(`${field} does not hold ${value}`);
  return Array.from({ length: bytes }, (_, at) => Math.floor(value / 256 ** (bytes - 1 - at)) % 256);
}
