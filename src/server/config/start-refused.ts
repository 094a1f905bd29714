/** The server cannot start, for a reason the person who started it can mend. The message is the whole of what they read. */
export class StartRefused extends Error {
  override readonly name = 'StartRefused';
}
