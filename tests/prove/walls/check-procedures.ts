import type { TestServer } from '#tests/support/test-server.ts';
import { type Answer, PROCEDURES } from '#tests/support/visitor.ts';
import type { Findings } from './findings.ts';
import { LINK_PROCEDURES, PROCEDURE_ROWS, type ProcedureRow } from './procedure-rows.ts';
import { ACTORS, type Actor, type Cast, endWorld, newWorld, stateOf, type World } from './world.ts';

/** Every procedure of the router × everybody: granted and refused as its row says, and a refusal tells and changes nothing. */
export async function checkProcedures(
  server: TestServer,
  cast: Cast,
  findings: Findings,
  rows: Readonly<Record<string, ProcedureRow>> = PROCEDURE_ROWS,
): Promise<void> {
  for (const name of Object.keys(rows)) findings.check(PROCEDURES.has(name), `${name} has a row, but is no procedure`);
  for (const name of PROCEDURES.keys()) {
    const row = rows[name];
    findings.check(row !== undefined, `${name} is a procedure without a row: say in procedure-rows.ts who may call it`);
    if (row) await checkAll(server, cast, { name, row, findings });
  }
}

/** What changes nothing leaves one world as it is for everybody; what changes something gets one for each. */
async function checkAll(server: TestServer, cast: Cast, one: Omit<Case, 'actor'>): Promise<void> {
  if (PROCEDURES.get(one.name) === 'mutation') {
    for (const actor of ACTORS) await checkOne(server, cast, { ...one, actor });
    return;
  }
  const world = await newWorld(server, cast);
  for (const actor of ACTORS) await checkIn(world, server, cast, { ...one, actor });
  await endWorld(server, world);
}

interface Case {
  readonly name: string;
  readonly row: ProcedureRow;
  readonly actor: Actor;
  readonly findings: Findings;
}

async function checkOne(server: TestServer, cast: Cast, one: Case): Promise<void> {
  const world = await newWorld(server, cast);
  await checkIn(world, server, cast, one);
  await endWorld(server, world);
}

async function checkIn(world: World, server: TestServer, cast: Cast, { name, row, actor, findings }: Case) {
  const before = await stateOf(server, world);
  const answer = await cast[actor].call(name, row.input(world, cast));
  const outcome = outcomeOf(answer);
  findings.check(outcome === row.expected[actor], `${name} as ${actor}: ${outcome} instead of ${row.expected[actor]}`);
  if (outcome !== 'ok' || PROCEDURES.get(name) === 'query')
    findings.check((await stateOf(server, world)) === before, `${name} as ${actor} changed the crew`);
  if (!isMember(actor) && !LINK_PROCEDURES.has(name))
    findings.check(!knows(answer, world), `${name} as ${actor} gave away: ${answer.text}`);
  await checkClosed(world, cast, { name, row, actor, findings });
  if (isMember(actor) || !row.missing) return;
  const nothing = await cast[actor].call(name, row.missing(world, cast));
  const same = nothing.status === answer.status && nothing.text === answer.text;
  findings.check(
    same,
    `${name} as ${actor} tells what is foreign from what is missing: ${answer.text} / ${nothing.text}`,
  );
}

/** What is closed answers, to the letter, as what never was. */
async function checkClosed(world: World, cast: Cast, { name, row, actor, findings }: Case): Promise<void> {
  const closed = row.closed?.(world);
  if (closed === undefined) return;
  const gone = await cast[actor].call(name, closed.gone);
  for (const input of closed.inputs) {
    const answer = await cast[actor].call(name, input);
    const same = answer.status === gone.status && answer.text === gone.text && answer.status !== 200;
    findings.check(same, `${name} as ${actor} tells what is closed from what never was: ${answer.text} / ${gone.text}`);
  }
}

const isMember = (actor: Actor) => actor === 'reader' || actor === 'editor' || actor === 'lead';

const knows = (answer: Answer, world: { readonly mark: string; readonly crewId: string; readonly rigId: string }) =>
  [world.mark, world.crewId, world.rigId].some((secret) => answer.text.includes(secret));

function outcomeOf({ status, text }: Answer): string {
  if (status === 200) return 'ok';
  return JSON.parse(text).error?.data?.refusal ?? `status ${status}`;
}
