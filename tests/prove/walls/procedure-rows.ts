import { randomId } from '#base/random-id.ts';
import type { Actor, Cast, World } from './world.ts';

/** What a door has to answer: `ok`, or the code of a refusal. */
export type Expected = Readonly<Record<Actor, string>>;

/** What is true of one procedure, whoever calls it. */
export interface ProcedureRow {
  /** Its input, aimed at the world. */
  readonly input: (world: World, cast: Cast) => unknown;
  /** The same input, aimed at nothing that exists; without one the procedure is aimed at nothing in particular. */
  readonly missing?: (world: World, cast: Cast) => unknown;
  /** Inputs aimed at what is closed, which has to answer everybody exactly as what never was. */
  readonly closed?: (world: World) => { readonly inputs: readonly unknown[]; readonly gone: unknown };
  readonly expected: Expected;
}

const members = (readers: string, editors: string, leads: string, others: string): Expected => ({
  nobody: 'signed-out',
  reader: readers,
  editor: editors,
  lead: leads,
  'foreign lead': others,
  'removed member': others,
});
const LOW = 'role-too-low';
const crewForAll = members('ok', 'ok', 'ok', 'no-such-crew');
const crewForEditors = members(LOW, 'ok', 'ok', 'no-such-crew');
const crewForLeads = members(LOW, LOW, 'ok', 'no-such-crew');
const mine = members('ok', 'ok', 'ok', 'ok');
const everybody: Expected = { ...mine, nobody: 'ok' };

type Extra = (world: World, cast: Cast) => object;
const onCrew = (expected: Expected, extra: Extra = () => ({})): ProcedureRow => ({
  input: (world, cast) => ({ crewId: world.crewId, ...extra(world, cast) }),
  missing: (world, cast) => ({ crewId: randomId(), ...extra(world, cast) }),
  expected,
});
const onRig = (expected: Expected, extra: object = {}): ProcedureRow => ({
  input: ({ rigId }) => ({ rigId, ...extra }),
  missing: () => ({ rigId: randomId(), ...extra }),
  expected,
});
const onRemovedRig = (expected: Expected): ProcedureRow => ({
  input: ({ removedRigId }) => ({ rigId: removedRigId }),
  missing: () => ({ rigId: randomId() }),
  expected,
});
const onType = (expected: Expected, extra: object = {}): ProcedureRow => ({
  input: ({ crewId, typeId }) => ({ crewId, typeId, ...extra }),
  missing: () => ({ crewId: randomId(), typeId: randomId(), ...extra }),
  expected,
});
const onDraft = (expected: Expected, extra: object = {}): ProcedureRow => ({
  input: ({ draftId }) => ({ draftId, ...extra }),
  missing: () => ({ draftId: randomId(), ...extra }),
  expected,
});
/** Aimed at the link of an offer; `extra` is what else is said. */
const byLink = (expected: Expected, extra: (world: World) => object = () => ({})): ProcedureRow => ({
  input: (world) => ({ token: world.handoverToken, ...extra(world) }),
  closed: (world) => ({
    inputs: world.closedTokens.map((token) => ({ token, ...extra(world) })),
    gone: { token: randomId() + randomId(), ...extra(world) },
  }),
  expected,
});
const aimless = (expected: Expected, input?: unknown): ProcedureRow => ({ input: () => input, expected });

const proposing = (rigId: string, houseId: string) => ({
  rigId,
  houseId,
  number: 1,
  words: '',
  edits: [{ kind: 'set-universe', universe: 2, label: 'Floor' }],
});

/** The rows: one for each procedure of the router. A procedure that is not here fails the proof. */
export const PROCEDURE_ROWS: Readonly<Record<string, ProcedureRow>> = {
  'me.get': aimless(everybody),
  'crews.list': aimless(mine),
  'crews.create': aimless(mine, { name: 'A crew of my own' }),
  'crews.get': onCrew(crewForAll),
  'crews.rename': onCrew(crewForLeads, () => ({ name: 'Renamed' })),
  'crews.leave': onCrew(crewForAll),
  'crews.setRole': onCrew(crewForLeads, ({ memberId }) => ({ userId: memberId, role: 'reader' })),
  'crews.removeMember': onCrew(crewForLeads, ({ memberId }) => ({ userId: memberId })),
  'invitations.create': onCrew(crewForLeads, () => ({ role: 'lead' })),
  'invitations.revoke': onCrew(crewForLeads, ({ invitationId }) => ({ invitationId })),
  // Whoever holds the link may look and, once signed in, come in: that is what a link is for.
  'invitations.look': { input: ({ token }) => ({ token }), expected: everybody },
  'invitations.accept': { input: ({ token }) => ({ token }), expected: mine },
  'venues.list': aimless(mine),
  'venues.create': onCrew(crewForEditors, () => ({ name: 'New venue' })),
  'venues.rename': {
    input: ({ venueId }) => ({ venueId, name: 'Renamed' }),
    missing: () => ({ venueId: randomId(), name: 'Renamed' }),
    expected: members(LOW, 'ok', 'ok', 'no-such-venue'),
  },
  'rigs.list': aimless(mine),
  'rigs.create': onCrew(crewForEditors, ({ venueId }) => ({ name: 'New rig', kind: 'house', venueId })),
  'rigs.get': onRig(members('ok', 'ok', 'ok', 'no-such-rig')),
  'rigs.rename': onRig(members(LOW, 'ok', 'ok', 'no-such-rig'), { name: 'Renamed' }),
  'rigs.remove': onRig(members(LOW, LOW, 'ok', 'no-such-rig')),
  'rigs.removed': onCrew(crewForAll),
  'rigs.bringBack': onRemovedRig(members(LOW, LOW, 'ok', 'no-such-removed-rig')),
  'rigs.destroy': {
    input: ({ removedRigId, mark }) => ({ rigId: removedRigId, name: `${mark} removed rig` }),
    missing: ({ mark }) => ({ rigId: randomId(), name: `${mark} removed rig` }),
    expected: members(LOW, LOW, 'ok', 'no-such-removed-rig'),
  },
  'audit.list': onCrew(crewForLeads),
  'audit.people': onCrew(crewForLeads),
  'revisions.list': onRig(members('ok', 'ok', 'ok', 'no-such-rig')),
  // The world's rig has revision 1 already, and has changed since.
  'revisions.freeze': onRig(members(LOW, 'ok', 'ok', 'no-such-rig'), {
    note: 'Frozen',
    accepted: { by: '', keys: [] },
  }),
  'revisions.start': {
    input: ({ rigId, crewId }) => ({ rigId, number: 1, crewId, name: 'Started', kind: 'show' }),
    missing: ({ crewId }) => ({ rigId: randomId(), number: 1, crewId, name: 'Started', kind: 'show' }),
    expected: members(LOW, 'ok', 'ok', 'no-such-rig'),
  },
  'history.steps': onRig(members('ok', 'ok', 'ok', 'no-such-rig'), { filter: {} }),
  'history.changes': onRig(members('ok', 'ok', 'ok', 'no-such-rig'), { filter: {}, seq: 1 }),
  'history.people': onRig(members('ok', 'ok', 'ok', 'no-such-rig')),
  'handovers.offer': onRig(members(LOW, 'ok', 'ok', 'no-such-rig'), { number: 1, words: 'Yours' }),
  'handovers.withdraw': {
    input: ({ rigId, handoverId }) => ({ rigId, handoverId }),
    missing: () => ({ rigId: randomId(), handoverId: randomId() }),
    expected: members(LOW, 'ok', 'ok', 'no-such-rig'),
  },
  'handovers.ofRig': onRig(members('ok', 'ok', 'ok', 'no-such-rig')),
  'handovers.ofCrew': onCrew(crewForAll),
  // Whoever holds the link may look, accept for a crew of theirs, and decline.
  'handovers.look': byLink(mine),
  'handovers.accept': byLink(crewForEditors, ({ receivingId }) => ({
    crewId: receivingId,
    name: 'Received',
    kind: 'show',
    words: 'Thank you',
  })),
  'handovers.decline': byLink(mine, () => ({ words: 'Not now' })),
  'proposals.make': {
    input: ({ showId, houseId }) => proposing(showId, houseId),
    missing: ({ houseId }) => proposing(randomId(), houseId),
    expected: members(LOW, 'ok', 'ok', 'no-such-rig'),
  },
  'proposals.listForRig': {
    input: ({ houseId }) => ({ rigId: houseId }),
    missing: () => ({ rigId: randomId() }),
    expected: members('ok', 'ok', 'ok', 'no-such-rig'),
  },
  'proposals.get': {
    input: ({ houseId, proposalId }) => ({ rigId: houseId, proposalId }),
    missing: () => ({ rigId: randomId(), proposalId: randomId() }),
    expected: members('ok', 'ok', 'ok', 'no-such-rig'),
  },
  'proposals.withdraw': {
    input: ({ showId, proposalId }) => ({ rigId: showId, proposalId }),
    missing: () => ({ rigId: randomId(), proposalId: randomId() }),
    expected: members(LOW, 'ok', 'ok', 'no-such-rig'),
  },
  'proposals.decide': {
    input: ({ houseId, proposalId }) => ({ rigId: houseId, proposalId, outcome: 'declined', words: '' }),
    missing: () => ({ rigId: randomId(), proposalId: randomId(), outcome: 'declined', words: '' }),
    expected: members(LOW, 'ok', 'ok', 'no-such-rig'),
  },
  'library.list': onCrew(crewForAll),
  'library.get': onType(crewForAll),
  'library.revision': onType(crewForAll, { number: 1 }),
  'library.newest': onCrew(crewForAll, ({ typeId }) => ({ typeIds: [typeId] })),
  'library.whereUsed': onType(crewForAll),
  'library.remove': onType(crewForEditors),
  'library.openDraft': onType(crewForEditors),
  'library.drafts': onCrew(crewForAll),
  'library.draft': onDraft(members('ok', 'ok', 'ok', 'no-such-draft')),
  'library.publishDraft': onDraft(members(LOW, 'ok', 'ok', 'no-such-draft'), { note: 'Published' }),
  'library.dropDraft': onDraft(members(LOW, 'ok', 'ok', 'no-such-draft')),
  'listMappings.recall': onCrew(crewForAll, () => ({ key: 'key' })),
  'listMappings.remember': onCrew(crewForEditors, () => ({ key: 'key', mapping: { other: true } })),
};

/** Procedures by which somebody who holds a link learns the name of the crew, or what it offers. */
export const LINK_PROCEDURES: ReadonlySet<string> = new Set([
  'invitations.look',
  'invitations.accept',
  'handovers.look',
]);
