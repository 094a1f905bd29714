const ALPHABET = '0123456789abcdefghjkmnpqrstvwxyz';

/** Makes ids; handed in wherever one is needed, so that tests can count instead. */
export type MakeId = () => string;

/**
 * A random id of 16 characters in Crockford base 32 (80 bits). Uses `getRandomValues`, which a browser also grants
 * over plain HTTP, where `randomUUID` is missing.
 */
export const randomId: MakeId = () => {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => ALPHABET[byte & 31]).join('');
};

/** Ids `prefix1`, `prefix2`, … for tests and seeds. */
export function countingIds(prefix: string): MakeId {
  let count = 0;
  return () => `${prefix}${++count}`;
}
