/** What the page asks first: who is signed in, and what kind of installation this is. */
export interface Me {
  readonly user: { readonly id: string; readonly name: string; readonly email: string } | null;
  /** True when the front page may offer to look around as the demo's people. */
  readonly demo: boolean;
  /** False when this page came over plain HTTP: others on the network can read what is sent. */
  readonly secure: boolean;
  readonly store: 'embedded' | 'postgres';
}
