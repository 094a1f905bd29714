import type { Refusal } from '#wire/refusal.ts';

/** What each refused request says: what happened, where, and what to do next. */
export const REFUSAL_SENTENCES: Readonly<Record<Refusal, string>> = {
  'signed-out': 'You are not signed in. Sign in and try again.',
  'no-such-crew':
    'There is no such crew among yours. Look it up in the list of your crews, or ask its lead for an invitation.',
  'no-such-rig':
    'There is no such rig among yours. Look it up in the list of your rigs, or ask the lead of its crew for an invitation.',
  'no-such-venue': 'There is no such venue among those of your crews. Look it up in the list of venues.',
  'no-such-member': 'This person is not in the crew any more. Reload the list of members.',
  'no-such-invitation': 'This invitation does not exist any more. Reload the list of invitations.',
  'role-too-low': 'Your role in this crew does not allow that. Ask a lead of the crew.',
  'last-lead': 'You are the last lead of this crew. Make another member lead first.',
  'name-taken': 'This crew has a venue of that name already. Choose another name.',
  'too-many': 'This crew holds as many of these as it can. Remove one first.',
  'too-many-crews': 'You are in as many crews as one person can be. Leave one first.',
  'invitation-gone': 'This invitation does not exist any more. Ask for a new link.',
  'invitation-used': 'This invitation was used already; each link lets one person in. Ask for a new link.',
  'invitation-expired': 'This invitation has expired. Ask for a new link.',
};
