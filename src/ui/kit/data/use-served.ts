import { useEffect } from 'react';
import { keep, useKept } from './kept.ts';
import { isUnreachable } from './unreachable.ts';

/** An answer of the server, or the one it gave the last time when it cannot be reached. */
export interface Served<T> {
  /** Undefined until there is one. */
  readonly value: T | undefined;
  /** Whether `value` is the server's, and not what this device kept. */
  readonly fresh: boolean;
  /** Why there is no value; null while the server is being asked. */
  readonly error: Failure | null;
}

interface Failure {
  readonly message: string;
}

interface Asked<T> {
  readonly data: T | undefined;
  readonly error: Failure | null;
}

/** Keeps the answers of `asked` under `key` (null keeps nothing), and falls back on the kept one. `read` as in `useKept`. */
export function useServed<T>(asked: Asked<T>, key: string | null, read: (value: unknown) => T | undefined): Served<T> {
  const { data, error } = asked;
  const kept = useKept(key, read);
  useEffect(() => {
    if (key !== null && data !== undefined) keep(key, data);
  }, [key, data]);
  if (data !== undefined) return { value: data, fresh: true, error: null };
  if (error !== null && !isUnreachable(error)) return { value: undefined, fresh: false, error };
  return { value: kept, fresh: false, error: kept === undefined ? error : null };
}
