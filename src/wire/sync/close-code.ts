/** Why the server closes a sync socket. Codes below 4000 are of RFC 6455 and the IANA WebSocket registry. */
export const CLOSE = {
  /** The process stops: come back. */
  restarting: 1012,
  /** The store did not take it, or the rig could not be read: come back and send again. */
  tryAgain: 1013,
  /** What came is not a message of this protocol, or not a document update. */
  malformed: 4400,
  signedOut: 4401,
  /** A reader sent an edit. */
  readerWrote: 4403,
  /** There is no such rig, or it is not theirs: both answer the same. */
  noSuchRig: 4404,
  /** Another process has taken the rig over: come back. */
  fenced: 4409,
  tooLarge: 4413,
  otherVersion: 4426,
  tooFast: 4429,
} as const;

export type CloseCode = (typeof CLOSE)[keyof typeof CLOSE];
