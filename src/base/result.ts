/** A refused request is a value, not an exception: `ok` with what was asked for, or `error` with why not. */
export type Result<T, E> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly error: E };

export const ok = <T>(value: T): Result<T, never> => ({ ok: true, value });

export const refuse = <E>(error: E): Result<never, E> => ({ ok: false, error });
