import { getRow } from '#base/table.ts';
import type { Fate, ProposalLine } from '#engine/diff/proposal.ts';
import { unitOfTask } from '#engine/diff/task-groups.ts';
import { formatCell } from '#engine/model/cell-text.ts';
import { cellOf } from '#engine/model/read-fixture.ts';
import type { Rig } from '#engine/model/rig.ts';
import type { ProposalMade, ProposalReceived, ProposalState } from '#wire/proposals.ts';
import { unitName } from './findings.ts';
import { listed } from './listed.ts';
import { counted, sayMoment } from './screens.ts';
import { rigTaskSentence, unitTaskSentence } from './tasks.ts';

const STATE_WORDS: Readonly<Record<ProposalState, string>> = {
  open: 'open',
  accepted: 'accepted',
  declined: 'declined',
  withdrawn: 'withdrawn',
};

/** What becomes of each part of a proposal; nothing to say of what fits. */
const FATE_WORDS: Readonly<Record<Fate, string>> = {
  fits: '',
  'so-already': 'It is so already.',
  'changed-since': 'Somebody has changed this in the house rig since. Taking it overwrites that.',
  gone: 'The unit is gone from the house rig. It cannot be taken.',
};

/** What a show leaves changed, proposed to the house it began as. */
export const PROPOSAL_WORDS = {
  title: 'Proposals from shows',
  menu: 'From shows',
  about:
    'What shows that began as this rig would leave changed in it. Nothing changes here until somebody of this crew takes it.',
  none: 'No show has proposed anything. A show proposes on its page “Put back” what stays as it is.',
  mine: 'What was proposed to the house',
  look: 'Look at it…',
  words: 'Words to the crew of the house',
  answer: 'Words to the crew of the show',
  proposeTitle: 'Propose to the house',
  proposeAbout: (count: number) =>
    `${counted(count, 'line')} marked “stays”. The crew of the house sees what their record would say, and takes it, in whole or in part, or declines.`,
  submit: 'Propose it',
  sent: 'It lies before the crew of the house now.',
  nothingStays: 'Mark a line “stays” first: what is to stay changed can be proposed to the house.',
  notHouse: 'What stays can be proposed to a house rig only.',
  tooLarge:
    'This is more than one proposal can carry. Propose a part of it: take the mark “stays” off some lines, propose, then mark the rest.',
  withdraw: 'Withdraw',
  decline: 'Decline',
  take: (count: number) => (count === 0 ? 'Take it' : `Take ${counted(count, 'part')}`),
  openOnes: 'Open',
  closedOnes: 'Answered',
  parts: 'What would be taken',
  nothingLeft: 'None of it can be taken any more. Decline it, and say why.',
  unreadable: 'This proposal cannot be read by this page. Reload the page; a newer version may be there.',
  taken: 'What you took is in this rig. The answer to the show has not gone out: take it again to send it.',
  caution: 'What is recorded here others trust when they plug and hang. See that it is so before you take it.',
  more: (count: number) => `and ${count.toLocaleString('en-GB')} more`,
} as const;

/** What is proposed, and by whom: `3 changes from Winter gala (Saltwind Touring), by Odile Fenn, 25 Nov, 14:02`. */
export const receivedWords = ({ edits, fromRigName, fromCrewName, by, at }: ProposalReceived): string =>
  `${counted(edits, 'change')} from ${fromRigName} (${fromCrewName}), by ${by}, ${sayMoment(at)}`;

export const madeWords = ({ edits, by, at }: ProposalMade): string =>
  `${counted(edits, 'change')}, by ${by}, ${sayMoment(at)}`;

/** Where a proposal stands: `accepted by Bram Kettle, 25 Nov, 18:02: Thank you`. */
export function stateWords(proposal: ProposalMade & { readonly decidedBy?: string | null }): string {
  const { state, decidedAt, answer, decidedBy } = proposal;
  const by = decidedBy === undefined || decidedBy === null ? '' : ` by ${decidedBy}`;
  const when = decidedAt === null ? '' : `, ${sayMoment(decidedAt)}`;
  return `${STATE_WORDS[state]}${by}${when}${answer === '' ? '' : `: ${answer}`}`;
}

/** A part of a proposal as one sentence. */
export const proposalSentence = (line: ProposalLine): string =>
  line.at === 'unit'
    ? `${unitName(unitOfTask(line.task))}: ${unitTaskSentence(line.task)}`
    : rigTaskSentence(line.task);

/** What becomes of a part of a proposal; with what the house says now, where somebody has changed it. */
export function fateSentence({ at, task, fate }: ProposalLine, now: Rig): string {
  const unit = at === 'unit' && fate === 'changed-since' ? getRow(now.fixtures, unitOfTask(task)?.id ?? '') : undefined;
  if (unit === undefined || at === 'rig' || task.fields.length === 0) return FATE_WORDS[fate];
  const says = task.fields.map((field) => formatCell(field, cellOf(unit, field)) || 'nothing');
  return `${FATE_WORDS[fate]} It says ${listed(says)} now.`;
}
