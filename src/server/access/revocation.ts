/** Whose rights have become fewer: a person's (signed out, removed from a crew, another role), or everybody's on a rig or a draft. */
type Revocation = { readonly user: string } | { readonly rig: string } | { readonly draft: string };

/** Makes every open connection ask for its rights again. Resolves once those that have none are closed. */
export type Revoke = (revocation: Revocation) => Promise<void>;
