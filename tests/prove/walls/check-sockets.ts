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

/** Every socket message × everybody, and sockets opened by pages of other sites. */
export async function checkSockets(server: TestServer, cast: Cast, findings: Findings): Promise<void> {
  for (const [kind, row] of Object.entries(SOCKET_ROWS))
    for (const actor of ACTORS) {
      const world = await newWorld(server, cast);
      const before = await stateOf(server, world);
      const outcome = await outcomeOf(cast[actor], world.rigId, row.message());
      const expected = row.expected[actor];
      findings.check(outcome === expected, `socket ${kind} as ${actor}: ${outcome} instead of ${expected}`);
      const wrote = (await stateOf(server, world)) !== before;
      await endWorld(server, world);
      findings.check(
        wrote === (kind === 'update' && expected === 'taken'),
        `socket ${kind} as ${actor} wrote: ${wrote}`,
      );
    }
  const world = await newWorld(server, cast);
  await checkForeign(cast, world, findings);
  for (const origin of ['http://evil.example', 'null', `${server.url}.evil.example`]) {
    const fate = await probeSync(cast.lead.socket(world.rigId, { origin })).fate;
    findings.check(fate.kind === 'refused' && fate.status === 403, `a socket from ${origin}: ${JSON.stringify(fate)}`);
  }
}

/** Says hello, then the message, then asks for a sign of life: whoever answers took it. */
async function outcomeOf(visitor: Visitor, rigId: string, message: ClientMessage): Promise<string> {
  const probe = probeSync(visitor.socket(rigId));
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

/** A foreign and a removed rig end exactly as one that never was. */
async function checkForeign(cast: Cast, world: World, findings: Findings): Promise<void> {
  const outsiders: readonly Actor[] = ['nobody', 'foreign lead', 'removed member'];
  for (const actor of outsiders) {
    const foreign = await probeSync(cast[actor].socket(world.rigId)).fate;
    const missing = await probeSync(cast[actor].socket(randomId())).fate;
    const same = JSON.stringify(foreign) === JSON.stringify(missing);
    findings.check(same, `a socket as ${actor} tells what is foreign from what is missing`);
  }
}

const spell = (fate: Fate) => (fate.kind === 'closed' ? String(fate.code) : `status ${fate.status}`);
