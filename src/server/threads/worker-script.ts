/** A thread's module as a source beside the one that asks, or, once built, as a bundle beside the server's. */
export const workerScript = (from: string, name: string): URL =>
  new URL(from.endsWith('.ts') ? `./${name}-from-source.mjs` : `./${name}.mjs`, from);
