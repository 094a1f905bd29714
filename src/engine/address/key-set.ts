/** A set that is a plain list while it is small: most steps touch one or two universes, and a Set costs more than they do. */
export class KeySet<Key> implements Iterable<Key> {
  readonly #few: Key[] = [];
  #many: Set<Key> | undefined;

  add(key: Key): void {
    if (this.#many !== undefined) this.#many.add(key);
    else if (this.#few.includes(key)) return;
    else if (this.#few.length < FEW) this.#few.push(key);
    else this.#many = new Set(this.#few).add(key);
  }

  [Symbol.iterator](): Iterator<Key> {
    return (this.#many ?? this.#few)[Symbol.iterator]();
  }
}

const FEW = 8;
