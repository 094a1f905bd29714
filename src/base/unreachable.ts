/** Closes a `switch` over a union: a new member that nobody handles fails to compile, and throws if it gets here all the same. */
export function unreachable(value: never): never {
  throw new Error(`unreachable: ${JSON.stringify(value)}`);
}
