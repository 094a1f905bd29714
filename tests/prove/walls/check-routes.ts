import type { TestServer } from '#tests/support/test-server.ts';
import type { Visitor } from '#tests/support/visitor.ts';
import type { Findings } from './findings.ts';
import { ENDS_SESSION, ROUTE_ROWS, type RouteRow } from './route-rows.ts';
import { ACTORS, type Actor, type Cast, newWorld, type World } from './world.ts';

/** Every address below /api × everybody; and every one that changes something × pages of other sites. */
export async function checkRoutes(server: TestServer, cast: Cast, findings: Findings): Promise<void> {
  const names = server.running.routes.map(({ method, path }) => `${method} ${path}`);
  for (const name of Object.keys(ROUTE_ROWS))
    findings.check(names.includes(name), `${name} has a row, but is no route`);
  const world = await newWorld(server, cast);
  for (const name of names) {
    const row = ROUTE_ROWS[name];
    findings.check(row !== undefined, `${name} is a route without a row: say in route-rows.ts who may ask for it`);
    if (!row) continue;
    for (const actor of ACTORS) await checkOne(cast, world, { name, row, actor, findings });
    if (name.startsWith('POST')) await checkOrigins(server, cast.lead, { path: row.path(world), findings });
  }
}

interface Case {
  readonly name: string;
  readonly row: RouteRow;
  readonly actor: Actor;
  readonly findings: Findings;
}

async function checkOne(cast: Cast, world: World, { name, row, actor, findings }: Case): Promise<void> {
  // A session that the request would end is not ours to use up: the signed-out stand in.
  const visitor = ENDS_SESSION.has(name) ? cast.nobody : cast[actor];
  const method = name.slice(0, name.indexOf(' '));
  const sent = row.body === undefined ? {} : { body: row.body, headers: row.headers ?? {} };
  const answer = await visitor.request(method, row.path(world), sent);
  const expected = row.expected[actor];
  findings.check(String(answer.status) === expected, `${name} as ${actor}: ${answer.status} instead of ${expected}`);
  await checkClosed(visitor, world, { name, row, actor, findings });
  if ((isMember(actor) && row.missing) || (row.isLink && expected === '200')) return;
  findings.check(!answer.text.includes(world.mark), `${name} as ${actor} gave away: ${answer.text}`);
  if (!row.missing) return;
  const nothing = await visitor.request(method, row.missing(), sent);
  const same = nothing.status === answer.status && nothing.text === answer.text;
  findings.check(same, `${name} as ${actor} tells what is foreign from what is missing`);
}

/** What is closed answers, to the letter, as what never was. */
async function checkClosed(visitor: Visitor, world: World, { name, row, actor, findings }: Case): Promise<void> {
  const closed = row.closed?.(world);
  if (closed === undefined) return;
  const method = name.slice(0, name.indexOf(' '));
  const gone = await visitor.request(method, closed.gone);
  for (const path of closed.paths) {
    const answer = await visitor.request(method, path);
    const same = answer.status === 404 && answer.status === gone.status && answer.text === gone.text;
    findings.check(same, `${name} as ${actor} tells what is closed from what never was: ${answer.text}`);
  }
}

const isMember = (actor: Actor) => actor === 'reader' || actor === 'editor' || actor === 'lead';

const FOREIGN_ORIGINS = ['http://evil.example', 'null', 'http://127.0.0.1', 'https://127.0.0.1.evil.example', ''];

async function checkOrigins(
  server: TestServer,
  visitor: Visitor,
  { path, findings }: { readonly path: string; readonly findings: Findings },
): Promise<void> {
  for (const origin of FOREIGN_ORIGINS) {
    const { status } = await visitor.request('POST', path, { body: {}, headers: { origin } });
    findings.check(status === 403, `POST ${path} from a page of "${origin}": ${status} instead of 403`);
  }
  // A browser sends no such thing, but a form of another site can send text.
  const answer = await visitor.request('POST', path, { body: '{}', headers: { 'content-type': 'text/plain' } });
  findings.check(answer.status === 415, `POST ${path} as text: ${answer.status} instead of 415`);
  const bare = await fetch(`${server.url}${path}`, { method: 'POST', headers: { cookie: visitor.cookie } });
  findings.check(bare.status === 403, `POST ${path} without an origin: ${bare.status} instead of 403`);
}
