import { deflateSync } from 'node:zlib';
import { assert, present } from '#base/assert.ts';
import { systemClock } from '#base/clock.ts';
import { randomId } from '#base/random-id.ts';
import { freezeRig } from '#document/frozen/frozen-rig.ts';
import { applyEdits } from '#engine/model/apply-edits.ts';
import { noteId } from '#engine/model/ids.ts';
import { EMPTY_RIG } from '#engine/model/rig.ts';
import { GENERIC_TYPES } from '#engine/type/generic-types.ts';
import type { Store } from '#server/db/store.ts';
import { hashOf } from '#server/record/record-job.ts';
import { hashToken } from '#server/tasks/hash-token.ts';
import { openDraft } from '#server/tasks/library/open-draft.ts';
import { revisionContent } from '#server/tasks/library/revision-content.ts';
import { takeFile } from '#server/tasks/library/take-file.ts';
import { storeNewRig } from '#server/tasks/store-new-rig.ts';
import type { TestServer } from '#tests/support/test-server.ts';
import type { Visitor } from '#tests/support/visitor.ts';
import { newProposal, type Proposed } from './new-proposal.ts';

/** Everybody who may stand before a door of a crew. */
export const ACTORS = ['nobody', 'reader', 'editor', 'lead', 'foreign lead', 'removed member'] as const;
export type Actor = (typeof ACTORS)[number];
export type Cast = Readonly<Record<Actor, Visitor>>;

/** A crew with one of everything, whose every name carries `mark`, so that a leak of any of them shows. */
export interface World extends Proposed {
  readonly mark: string;
  readonly crewId: string;
  readonly rigId: string;
  /** A rig that was taken off everybody's lists. */
  readonly removedRigId: string;
  readonly venueId: string;
  readonly typeId: string;
  /** An open draft of that type. */
  readonly draftId: string;
  readonly invitationId: string;
  readonly token: string;
  /** An open offer of revision 1 of the rig, its link, and the links of offers that are closed in every way there is. */
  readonly handoverId: string;
  readonly handoverToken: string;
  readonly closedTokens: readonly string[];
  /** Another crew of the same readers, editors and leads, which may accept the offer. */
  readonly receivingId: string;
  /** A member beside the cast, for procedures on members. */
  readonly memberId: string;
}

/** Signs everybody up, once: what they are in a crew is decided by each world. */
export async function newCast(server: TestServer): Promise<Cast> {
  const people = await Promise.all(
    ACTORS.map((actor) => (actor === 'nobody' ? server.visitor() : server.person(actor))),
  );
  const cast = Object.fromEntries(ACTORS.map((actor, index) => [actor, people[index]])) as Record<Actor, Visitor>;
  await cast['foreign lead'].granted('crews.create', { name: 'Another crew' });
  return cast;
}

/** A fresh world, straight into the store, from which the removed member is removed as anybody would be. */
export async function newWorld(server: TestServer, cast: Cast): Promise<World> {
  const { store } = server.running;
  const mark = `mark${randomId()}`;
  const [crewId, rigId, venueId, invitationId, memberId] = [randomId(), randomId(), randomId(), randomId(), randomId()];
  const removedRigId = randomId();
  const token = randomId() + randomId();
  const at = new Date();
  await store.prisma.user.create({ data: { id: memberId, name: `${mark} member`, email: `${mark}@crew.example` } });
  const memberships = [
    { crewId, userId: cast.lead.userId, role: 'lead' },
    { crewId, userId: memberId, role: 'lead' },
    { crewId, userId: cast.editor.userId, role: 'editor' },
    { crewId, userId: cast.reader.userId, role: 'reader' },
    { crewId, userId: cast['removed member'].userId, role: 'editor' },
  ] as const;
  await store.prisma.$transaction([
    store.prisma.crew.create({ data: { id: crewId, name: `${mark} crew` } }),
    store.prisma.membership.createMany({ data: [...memberships] }),
    store.prisma.venue.create({ data: { id: venueId, crewId, name: `${mark} venue` } }),
    store.prisma.listMapping.create({ data: { crewId, key: 'key', mapping: { mark } } }),
    store.prisma.invitation.create({
      data: {
        id: invitationId,
        crewId,
        role: 'reader',
        tokenHash: hashToken(token),
        createdBy: memberId,
        expiresAt: new Date(at.getTime() + 60_000),
      },
    }),
  ]);
  await storeNewRig(store, { id: rigId, crewId, venueId, name: `${mark} rig`, kind: 'show', userId: memberId, at });
  const removed = {
    id: removedRigId,
    crewId,
    venueId,
    name: `${mark} removed rig`,
    kind: 'show',
    userId: memberId,
    at,
  } as const;
  await storeNewRig(store, removed);
  await store.prisma.rig.update({ where: { id: removedRigId }, data: { removedAt: at, removedBy: memberId } });
  await newRevision(store, { rigId, userId: memberId, mark });
  const offers = await newOffers(store, cast, { crewId, rigId, userId: memberId, mark });
  const proposed = await newProposal(store, {
    crewId,
    userId: memberId,
    mark,
    freeze: (rig) => newRevision(store, { rigId: rig, userId: memberId, mark }),
  });
  const { typeId, draftId } = await newLibrary(store, { crewId, userId: memberId, mark });
  await cast.lead.granted('crews.removeMember', { crewId, userId: cast['removed member'].userId });
  const ids = { crewId, rigId, removedRigId, venueId, typeId, draftId, invitationId, memberId };
  return { ...proposed, ...offers, ...ids, mark, token };
}

/** Revision 1 of the rig: another state of it than it is in, which says the mark. */
async function newRevision(
  store: Store,
  { rigId, userId, mark }: { readonly rigId: string; readonly userId: string; readonly mark: string },
): Promise<void> {
  const rig = applyEdits(EMPTY_RIG, [{ kind: 'set-note', note: noteId('n'), text: `${mark} note`, order: 1 }]);
  const text = freezeRig(rig);
  await store.prisma.rigRevision.create({
    data: {
      rigId,
      number: 1,
      hash: hashOf(text),
      content: Uint8Array.from(deflateSync(text)),
      size: text.length,
      seq: 1n,
      note: `${mark} revision`,
      units: 0,
      counts: { blocker: 0, caution: 0, note: 0 },
      findings: Uint8Array.from(deflateSync('[]')),
      accepted: [],
      by: userId,
      byName: `${mark} member`,
      at: new Date(),
    },
  });
}

interface OfferedIn {
  readonly crewId: string;
  readonly rigId: string;
  readonly userId: string;
  readonly mark: string;
}

/** An open offer of the revision, four that are closed, and the crew that may accept. */
async function newOffers(
  { prisma }: Store,
  cast: Cast,
  { crewId, rigId, userId, mark }: OfferedIn,
): Promise<Pick<World, 'handoverId' | 'handoverToken' | 'closedTokens' | 'receivingId'>> {
  const [handoverId, receivingId, handoverToken] = [randomId(), randomId(), randomId() + randomId()];
  await prisma.crew.create({ data: { id: receivingId, name: `${mark} receiving crew` } });
  const roles = ['reader', 'editor', 'lead'] as const;
  await prisma.membership.createMany({
    data: roles.map((role) => ({ crewId: receivingId, userId: cast[role].userId, role })),
  });
  const minute = 60_000;
  const [now, later, before] = [0, minute, -minute].map((ms) => new Date(Date.now() + ms));
  assert(now && later && before, 'three instants');
  const offer = {
    rigId,
    number: 1,
    crewId,
    words: `${mark} words`,
    createdBy: userId,
    createdByName: `${mark} member`,
  };
  const open = { ...offer, createdAt: before, expiresAt: later };
  const ended = { ...open, decidedBy: userId, decidedByName: `${mark} member`, decidedAt: now };
  const closed = [
    { ...ended, state: 'declined' as const },
    { ...ended, state: 'withdrawn' as const },
    { ...open, expiresAt: before },
    // Of a crew that none of the cast is in.
    { ...ended, state: 'accepted' as const, toCrewId: randomId(), toCrewName: `${mark} third crew` },
  ].map((each) => ({ ...each, token: randomId() + randomId() }));
  await prisma.handover.createMany({
    data: [
      { ...open, id: handoverId, tokenHash: hashToken(handoverToken) },
      ...closed.map(({ token, ...each }) => ({ ...each, id: randomId(), tokenHash: hashToken(token) })),
    ],
  });
  return { handoverId, handoverToken, closedTokens: closed.map(({ token }) => token), receivingId };
}

/** A library of one type, with a draft of its next revision. */
async function newLibrary(
  store: Store,
  { crewId, userId, mark }: { readonly crewId: string; readonly userId: string; readonly mark: string },
): Promise<Pick<World, 'typeId' | 'draftId'>> {
  const context = { store, clock: systemClock, makeId: randomId };
  const dimmer = present(GENERIC_TYPES[0], 'a generic type');
  const content = await revisionContent({ ...dimmer, maker: mark, model: `${mark} type` }, null);
  const taken = await takeFile(context, { crewId, userId, content });
  assert(taken.ok, 'a type is taken into an empty library');
  const typeId = taken.value.type.id;
  const draft = await openDraft(context, { crewId, userId, typeId });
  assert(draft.ok, 'a draft of a type is opened');
  return { typeId, draftId: draft.value.draftId };
}

/** Takes a world away again, so that nobody comes to be in more crews than a person may. */
export async function endWorld(server: TestServer, { crewId, receivingId }: World): Promise<void> {
  const { prisma } = server.running.store;
  const both = { in: [crewId, receivingId] };
  await prisma.$transaction([
    prisma.rig.deleteMany({ where: { crewId: both } }),
    prisma.crew.deleteMany({ where: { id: both } }),
  ]);
}

/** Everything the store knows of a world's crew, to see whether a refused request changed any of it. */
export async function stateOf(server: TestServer, { crewId, rigId, draftId, receivingId }: World): Promise<string> {
  const { prisma } = server.running.store;
  const crew = await prisma.crew.findUnique({
    where: { id: crewId },
    include: {
      memberships: { orderBy: { userId: 'asc' } },
      invitations: { orderBy: { id: 'asc' } },
      venues: { orderBy: { id: 'asc' } },
      listMappings: { orderBy: { key: 'asc' } },
      rigs: {
        orderBy: { id: 'asc' },
        omit: { fence: true },
        include: {
          proposals: { orderBy: { id: 'asc' } },
          revisions: { orderBy: { number: 'asc' }, omit: { content: true, findings: true } },
        },
      },
      audit: { orderBy: { id: 'asc' } },
      handovers: { orderBy: { id: 'asc' } },
      fixtureTypes: { orderBy: { id: 'asc' }, include: { revisions: { orderBy: { number: 'asc' } } } },
      typeDrafts: { orderBy: { id: 'asc' }, omit: { fence: true } },
    },
  });
  const updates = await Promise.all([
    prisma.rigUpdate.count({ where: { rigId } }),
    prisma.typeDraftUpdate.count({ where: { draftId } }),
    prisma.rig.count({ where: { crewId: receivingId } }),
    prisma.auditEntry.count({ where: { crewId: receivingId } }),
  ]);
  const plain = (_key: string, value: unknown) => (typeof value === 'bigint' ? value.toString() : value);
  return JSON.stringify([present(crew, `crew ${crewId} is gone`), ...updates], plain);
}
