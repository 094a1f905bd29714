import type { CloseCode } from '#wire/sync/close-code.ts';

/** The far end of one connection, as the transport shows it. */
export interface Peer {
  send(frame: Uint8Array): void;
  /** Bytes that were sent and have not left this process yet. */
  buffered(): number;
  /** Nothing that arrives afterwards is handed on. */
  close(code: CloseCode): void;
}
