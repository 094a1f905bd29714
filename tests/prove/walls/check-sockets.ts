import type { WebSocket } from 'ws';
import { randomId } from '#base/random-id.ts';
import { type Fate, HELLO, probeSync, someUpdate } from '#tests/support/sync-probe.ts';
import type { TestServer } from '#tests/support/test-server.ts';
import type { Visitor } from '#tests/support/visitor.ts';
import { CLOSE } from '#wire/sync/close-code.ts';
import type { ClientMessage } from '#wire/sync/message.ts';
import type { Findings } from './findings.ts';
import type { Expected } from './procedure-rows.ts';
import { ACTORS, type Actor, type Cast, endWorld, newWorld, stateOf, type World } from './world.ts';

interface SocketRow {
  readonly message: () => ClientMessage;
  /** `taken`, or the code the socket is closed with. */
  readonly expected: Expected;
}

const shutOut = {
  nobody: String(CLOSE.signedOut),
  'foreign lead': String(CLOSE.noSuchRig),
  'removed member': String(CLOSE.noSuchRig),
};
const forMembers: Expected = { ...shutOut, reader: 'taken', editor: 'taken', lead: 'taken' };

/** The rows: one for each message a client may send. One without a row does not compile. */
const SOCKET_ROWS: Readonly<Record<ClientMessage['kind'], SocketRow>> = {
  hello: { message: () => HELLO, expected: forMembers },
  update: {
    message: () => ({ kind: 'update', counter: 1, bytes: someUpdate() }),
    expected: { ...forMembers, reader: String(CLOSE.readerWrote) },
  },
  presence: { message: () => ({ kind: 'presence', where: null }), expected: forMembers },
  ping: { message: () => ({ kind: 'ping' }), expected: forMembers },
};

interface Door {
  readonly name: string;
  readonly idIn: (world: World) => string;
  readonly open: (visitor: Visitor, id: string, headers?: Readonly<Record<string, string>>) => WebSocket;
}

/** The doors that sockets come through, one for each kind of document. */
const DOORS: readonly Door[] = [
  { name: 'rig', idIn: ({ rigId }) => rigId, open: (visitor, id, headers) => visitor.socket(id, headers) },
  { name: 'draft', idIn: ({ draftId }) => draftId, open: (visitor, id, headers) => visitor.draftSocket(id, headers) },
];

/** Every socket message × everybody at every door, and sockets opened by pages of other sites. */
export async function checkSockets(server: TestServer, cast: Cast, findings: Findings): Promise<void> {
  for (const door of DOORS) {
    for (const [kind, row] of Object.entries(SOCKET_ROWS))
      for (const actor of ACTORS)
        await checkOne(server, cast, { name: `${door.name} socket ${kind}`, door, row, actor, findings });
    const world = await newWorld(server, cast);
    await checkForeign(cast, world, door, findings);
    for (const origin of ['http://evil.example', 'null', `${server.url}.evil.example`]) {
      const fate = await probeSync(door.open(cast.lead, door.idIn(world), { origin })).fate;
      const shut = fate.kind === 'refused' && fate.status === 403;
      findings.check(shut, `a ${door.name} socket from ${origin}: ${JSON.stringify(fate)}`);
    }
  }
}

interface Case {
  readonly name: string;
  readonly door: Door;
  readonly row: SocketRow;
  readonly actor: Actor;
  readonly findings: Findings;
}

async function checkOne(server: TestServer, cast: Cast, { name, door, row, actor, findings }: Case): Promise<void> {
  const world = await newWorld(server, cast);
  const before = await stateOf(server, world);
  const message = row.message();
  const outcome = await outcomeOf(door.open(cast[actor], door.idIn(world)), message);
  const expected = row.expected[actor];
  findings.check(outcome === expected, `${name} as ${actor}: ${outcome} instead of ${expected}`);
  const wrote = (await stateOf(server, world)) !== before;
  await endWorld(server, world);
  findings.check(wrote === (message.kind === 'update' && expected === 'taken'), `${name} as ${actor} wrote: ${wrote}`);
}

/** Says hello, then the message, then asks for a sign of life: whoever answers took it. */
async function outcomeOf(socket: WebSocket, message: ClientMessage): Promise<string> {
  const probe = probeSync(socket);
  probe.send(HELLO);
  await probe.hear('welcome');
  if (message.kind !== 'hello') probe.send(message);
  if (message.kind === 'update') await probe.hear('ack');
  probe.send({ kind: 'ping' });
  const alive = await probe.hear('pong');
  probe.close();
  if (alive) return 'taken';
  return spell(await probe.fate);
}

/** A foreign document ends exactly as one that never was. */
async function checkForeign(cast: Cast, world: World, door: Door, findings: Findings): Promise<void> {
  const outsiders: readonly Actor[] = ['nobody', 'foreign lead', 'removed member'];
  for (const actor of outsiders) {
    const foreign = await probeSync(door.open(cast[actor], door.idIn(world))).fate;
    const missing = await probeSync(door.open(cast[actor], randomId())).fate;
    const same = JSON.stringify(foreign) === JSON.stringify(missing);
    findings.check(same, `a ${door.name} socket as ${actor} tells what is foreign from what is missing`);
  }
}

const spell = (fate: Fate) => (fate.kind === 'closed' ? String(fate.code) : `status ${fate.status}`);
