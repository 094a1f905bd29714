/** Why a request was refused. One code per cause; `words/refusals.ts` says each in a sentence, `server/api` gives each a status. */
export type Refusal =
  | 'signed-out'
  | 'no-such-crew'
  | 'no-such-rig'
  | 'no-such-venue'
  | 'no-such-member'
  | 'no-such-invitation'
  | 'role-too-low'
  | 'last-lead'
  | 'name-taken'
  | 'too-many'
  | 'too-many-crews'
  | 'invitation-gone'
  | 'invitation-used'
  | 'invitation-expired';
