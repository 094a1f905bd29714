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
  'no-such-type':
    'There is no such type in the library of this crew. Somebody may have removed it: look it up in the list.',
  'no-such-revision': 'This type has no such revision. Look it up in the list of its revisions.',
  'no-such-draft': 'There is no such draft among those of your crews. Look it up in the library of the crew.',
  'draft-closed': 'This draft was published or dropped already. Reload the library, and start a new draft.',
  'draft-busy': 'Somebody writes in this draft right now. Nothing was published. Publish again in a moment.',
  'built-in-type': 'This type came with Rigledger and stays as it is. Start a draft from it to make one of your own.',
  'type-name-taken':
    'Another type of this library has that maker and model already. Write a revision of that one, or give this one another name.',
  'type-unnamed': 'The type has no name. Give it one, or name the file after it, and try again.',
  'type-too-large':
    'This takes more time or room than any fixture type needs. Take modes that nobody uses out of it, and try again.',
  'too-many-revisions':
    'This type has as many revisions as a type can have. Make a new type of it, under another name.',
  'no-such-rig-revision': 'This rig has no such revision. Look it up in the list of its revisions.',
  'revision-same': 'The newest revision says the same already. Nothing was frozen: change something first.',
  'blockers-open':
    'This rig has blockers that nobody answers for. Nothing was frozen: clear them, or say who accepts each of them.',
  'blockers-unnamed': 'Nobody is named who accepts the blockers. Nothing was frozen: write the name of a person.',
  'rig-too-large': 'This rig takes more time or room than a rig may. Take units out of it, and try again.',
  'revision-damaged':
    'What is stored of this revision does not agree with its hash. Nothing was made of it: tell whoever looks after this installation.',
  'too-many-rig-revisions':
    'This rig has as many revisions as a rig can have. Start a new rig from the newest of them.',
  'no-such-moment': 'Nothing is kept of this rig at that moment. Choose another one in its history.',
  'no-such-handover':
    'There is no such offer. It may have been taken back, answered or left too long. Ask whoever sent you the link for a new one.',
  'handover-closed': 'This offer is not open any more. Reload the list of offers to see what became of it.',
  'handover-own': 'This rig belongs to that crew already. Choose the crew that receives it.',
  'too-many-handovers': 'This crew has as many open offers as it can. Take one back first.',
  'no-house-rig':
    'The house rig that this show began as is not in this installation, or not any more. Nothing was proposed: tell its crew in another way.',
  'no-such-proposal': 'There is no such proposal any more. Reload the page.',
  'proposal-closed': 'This proposal was answered or withdrawn already. Reload the page to see how.',
  'proposal-unreadable':
    'What was to be proposed cannot be read. Nothing was sent: reload the page, and propose it again.',
  'too-many-proposals':
    'The house has as many open proposals as it can. Withdraw one of yours, or wait until its crew has answered some.',
  'no-such-removed-rig':
    'There is no such removed rig among those of your crews. It was brought back or destroyed meanwhile: reload the page of the crew.',
  'crew-too-large':
    'This crew has more than fits into one archive. Nothing was taken out: destroy removed rigs that nobody needs, and try again.',
  'name-unlike': 'This is not the name of the rig. Nothing was destroyed: type the name as it stands in the list.',
  'too-many-drafts': 'This crew has as many open drafts as it can. Publish or drop one first.',
};
