import { afterEach, expect, it } from 'vitest';
import { present } from '#base/assert.ts';
import { startPostgres } from '#tests/support/postgres.ts';
import { spawnServer } from '#tests/support/spawn-server.ts';
import { newVisitor } from '#tests/support/visitor.ts';

const cleanUps: (() => void)[] = [];
afterEach(() => {
  for (const cleanUp of cleanUps.splice(0)) cleanUp();
});

it('outlives its store: says so, refuses with a sentence, and still stops when told to', async () => {
  const postgres = await startPostgres();
  const server = spawnServer({ DATABASE_URL: await postgres.createDatabase() });
  cleanUps.push(server.kill);
  const address = present(await server.address, `the server did not start: ${server.lines.join('\n')}`);
  const person = newVisitor(address);
  await person.signUp('Ada');
  expect(JSON.parse((await person.request('GET', '/api/health')).text)).toMatchObject({
    status: 'ok',
    store: 'postgres',
  });
  await postgres.stop();

  const health = await person.request('GET', '/api/health');
  expect([health.status, JSON.parse(health.text).status]).toEqual([503, 'store-unreachable']);
  const list = await person.call('rigs.list');
  expect([list.status, JSON.parse(list.text).error.message]).toEqual([500, expect.stringMatching(/^Something broke/)]);
  expect(server.lines.some((line) => line.includes(' trouble '))).toBe(true);
  expect(server.lines.join('\n')).not.toContain(person.cookie.split('=')[1]);

  server.child.kill('SIGTERM');
  expect(await server.exit).toBe(0);
});
