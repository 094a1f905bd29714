/** What a connection tells the client. After `closed` it tells nothing more. */
export interface TransportListener {
  opened(): void;
  frame(bytes: Uint8Array): void;
  /** `code` as in RFC 6455; 1006 when the network failed without a word. */
  closed(code: number): void;
}

export interface Transport {
  send(frame: Uint8Array): void;
  /** Ends it at once; `closed` is not called any more. */
  close(): void;
}

/**
 * Opens a connection to the sync socket of the rig. Never throws: a failure is a `closed`. The listener is not called before this has
 * returned.
 */
export type Connect = (listener: TransportListener) => Transport;
