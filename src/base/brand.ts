declare const brand: unique symbol;

/** A plain value that only its one maker may produce, so that a slot is never passed as a universe. */
export type Brand<T, Name extends string> = T & { readonly [brand]: Name };
