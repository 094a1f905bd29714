import type { WebSocket } from 'ws';
import { assert } from '#base/assert.ts';
import type { StoreKind } from '#tests/support/store.ts';
import { HELLO, probeSync, type SyncProbe, someUpdate } from '#tests/support/sync-probe.ts';
import { startTestServer, type TestServer } from '#tests/support/test-server.ts';
import type { Visitor } from '#tests/support/visitor.ts';
import { CLOSE } from '#wire/sync/close-code.ts';

/** How one loss of rights went. */
export interface Revocation {
  readonly name: string;
  /** Milliseconds from asking for it until the last socket was closed or knew its new role. */
  readonly ms: number;
  /** What did not hold. */
  readonly leaks: readonly string[];
}

/** Everybody who takes part in one case. */
interface Scene {
  readonly server: TestServer;
  readonly lead: Visitor;
  readonly member: Visitor;
  readonly crewId: string;
  readonly rigId: string;
  readonly draftId: string;
}

/** A kind of document that sockets are open on. */
interface Door {
  readonly name: string;
  readonly open: (scene: Scene, cookie?: string) => WebSocket;
  readonly headOf: (scene: Scene) => Promise<bigint | undefined>;
}

const RIG: Door = {
  name: 'rig',
  open: ({ member, rigId }, cookie = member.cookie) => member.socket(rigId, { cookie }),
  headOf: async ({ server, rigId }) =>
    (await server.running.store.prisma.rig.findUnique({ where: { id: rigId } }))?.head,
};
const DRAFT: Door = {
  name: 'draft',
  open: ({ member, draftId }, cookie = member.cookie) => member.draftSocket(draftId, { cookie }),
  headOf: async ({ server, draftId }) =>
    (await server.running.store.prisma.typeDraft.findUnique({ where: { id: draftId } }))?.head,
};

interface Case {
  readonly name: string;
  /** Where it ends rights. */
  readonly doors: readonly Door[];
  readonly end: (scene: Scene) => Promise<unknown>;
  /** The code with which the member's sockets are closed, or the role they keep. */
  readonly expected: number | 'reader';
}

const CASES: readonly Case[] = [
  {
    name: 'removed by a lead',
    doors: [RIG, DRAFT],
    end: ({ lead, member, crewId }) => lead.granted('crews.removeMember', { crewId, userId: member.userId }),
    expected: CLOSE.noSuchRig,
  },
  {
    name: 'left the crew',
    doors: [RIG, DRAFT],
    end: ({ member, crewId }) => member.granted('crews.leave', { crewId }),
    expected: CLOSE.noSuchRig,
  },
  {
    name: 'made a reader',
    doors: [RIG, DRAFT],
    end: ({ lead, member, crewId }) => lead.granted('crews.setRole', { crewId, userId: member.userId, role: 'reader' }),
    expected: 'reader',
  },
  {
    name: 'signed out',
    doors: [RIG, DRAFT],
    end: ({ member }) => member.request('POST', '/api/auth/sign-out', { body: {} }),
    expected: CLOSE.signedOut,
  },
  {
    name: 'the rig was removed',
    doors: [RIG],
    end: ({ lead, rigId }) => lead.granted('rigs.remove', { rigId }),
    expected: CLOSE.noSuchRig,
  },
  {
    name: 'the draft was dropped',
    doors: [DRAFT],
    end: ({ lead, draftId }) => lead.granted('library.dropDraft', { draftId }),
    expected: 'reader',
  },
];

/** Ends rights while real sockets are open and writing: each has to be closed, and every later write refused. */
export async function checkRevoke(kind: StoreKind): Promise<readonly Revocation[]> {
  const server = await startTestServer(kind);
  try {
    const found: Revocation[] = [];
    for (const one of CASES) for (const door of one.doors) found.push(await play(server, one, door));
    return found;
  } finally {
    await server.stop();
  }
}

const SOCKETS = 5;

async function play(server: TestServer, { name: how, end, expected }: Case, door: Door): Promise<Revocation> {
  const name = `${how} (${door.name})`;
  const scene = await newScene(server);
  const probes = await Promise.all(Array.from({ length: SOCKETS }, () => openWriter(door.open(scene))));
  const { cookie } = scene.member;
  const from = performance.now();
  await end(scene);
  const fates = await Promise.all(probes.map((probe) => (expected === 'reader' ? roleOf(probe) : codeOf(probe))));
  const ms = performance.now() - from;
  const head = await door.headOf(scene);
  const leaks = fates.filter((fate) => fate !== expected).map((fate) => `${name}: ${fate} instead of ${expected}`);
  // Whoever goes on all the same: the old sockets, and a new one with the old cookie.
  for (const probe of probes) probe.send({ kind: 'update', counter: 2, bytes: someUpdate() });
  const late = probeSync(door.open(scene, cookie));
  late.send(HELLO);
  if (await late.hear('welcome')) late.send({ kind: 'update', counter: 1, bytes: someUpdate() });
  await late.fate;
  await Promise.all(probes.map((probe) => probe.fate));
  if ((await door.headOf(scene)) !== head) leaks.push(`${name}: a write went through afterwards`);
  return { name, ms, leaks };
}

async function newScene(server: TestServer): Promise<Scene> {
  const [lead, member] = await Promise.all([server.person('Lead'), server.person('Member')]);
  const { id: crewId } = await lead.granted<{ id: string }>('crews.create', { name: 'Crew' });
  const { path } = await lead.granted<{ path: string }>('invitations.create', { crewId, role: 'editor' });
  await member.granted('invitations.accept', { token: path.slice('/join/'.length) });
  const { id: rigId } = await lead.granted<{ id: string }>('rigs.create', { crewId, name: 'Rig', kind: 'show' });
  const { draftId } = await lead.granted<{ draftId: string }>('library.openDraft', { crewId, typeId: null });
  return { server, lead, member, crewId, rigId, draftId };
}

/** A socket that has written, and been told that it is stored. */
async function openWriter(socket: WebSocket): Promise<SyncProbe> {
  const probe = probeSync(socket);
  probe.send(HELLO);
  assert(await probe.hear('welcome'), 'an editor was not let in');
  probe.send({ kind: 'update', counter: 1, bytes: someUpdate() });
  assert(await probe.hear('ack'), 'an edit of an editor was not taken');
  return probe;
}

async function codeOf(probe: SyncProbe): Promise<number | string> {
  const fate = await probe.fate;
  return fate.kind === 'closed' ? fate.code : `status ${fate.status}`;
}

const roleOf = async (probe: SyncProbe): Promise<string> => (await probe.hear('role'))?.role ?? 'closed';
