/** Something a person may no longer do. Whoever holds a connection opened under it closes that connection. */
export type Revocation =
  /** A member left, was removed, or has another role now. */
  | { readonly kind: 'membership'; readonly crewId: string; readonly userId: string }
  /** A session ended. */
  | { readonly kind: 'session'; readonly userId: string }
  | { readonly kind: 'rig'; readonly rigId: string };

export type Revoke = (revocation: Revocation) => void;
