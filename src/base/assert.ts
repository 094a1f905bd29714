/** Throws when a condition that only a bug can break is broken; `message` carries the values. */
export function assert(condition: unknown, message: string): asserts condition {
  if (!condition) throw new Error(message);
}

/** The value, or a throw with `message` when it is missing: for a lookup that only a bug can fail. */
export function present<T>(value: T | null | undefined, message: string): T {
  if (value === null || value === undefined) throw new Error(message);
  return value;
}
