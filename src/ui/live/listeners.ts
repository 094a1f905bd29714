/** A set of functions to call when something happened. */
export interface Listeners {
  add(listen: () => void): () => void;
  tell(): void;
}

/** Listeners that may add and remove listeners while they are told. */
export function createListeners(): Listeners {
  const all = new Set<() => void>();
  return {
    add(listen) {
      all.add(listen);
      return () => {
        all.delete(listen);
      };
    },
    tell() {
      for (const listen of [...all]) listen();
    },
  };
}

/** Listeners by key; a key without listeners takes no room. */
export interface KeyedListeners<Key> {
  add(key: Key, listen: () => void): () => void;
  tell(keys: Iterable<Key>): void;
  keys(): Iterable<Key>;
  has(key: Key): boolean;
}

export function createKeyedListeners<Key>(): KeyedListeners<Key> {
  const all = new Map<Key, Set<() => void>>();
  return {
    add(key, listen) {
      const some = all.get(key) ?? new Set();
      all.set(key, some.add(listen));
      return () => {
        some.delete(listen);
        if (some.size === 0 && all.get(key) === some) all.delete(key);
      };
    },
    tell(keys) {
      for (const key of keys) for (const listen of [...(all.get(key) ?? [])]) listen();
    },
    keys: () => [...all.keys()],
    has: (key) => all.has(key),
  };
}
