/** `of`, worked out once for each object it is asked about. Nothing is kept of objects that nobody else keeps. */
export function memoByIdentity<Key extends object, Value>(of: (key: Key) => Value): (key: Key) => Value {
  const known = new WeakMap<Key, { readonly value: Value }>();
  return (key) => {
    const entry = known.get(key) ?? { value: of(key) };
    known.set(key, entry);
    return entry.value;
  };
}
