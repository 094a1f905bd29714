import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { chownSync, existsSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import pg from 'pg';
import { keepOnce } from './keep-once.ts';
import { findPostgres } from './machine.mjs';

interface Ran {
  readonly uid?: number;
  readonly gid?: number;
}

export interface TestPostgres {
  /** Makes a fresh, empty database and answers its URL. */
  createDatabase(): Promise<string>;
  /** Stops the server and deletes its folder. */
  stop(): Promise<void>;
}

/** Starts a real Postgres server of its own in a temporary folder, on a free loopback port, with the settings it ships with. */
export async function startPostgres(): Promise<TestPostgres> {
  const bin = findPostgres();
  if (!bin) throw new Error('Postgres was not found on this machine');
  const folder = mkdtempSync(join(tmpdir(), 'rigledger-postgres-'));
  const user = whoRuns(folder);
  makeCluster(bin, folder, user);
  const port = await freePort();
  const settings = ['-p', String(port), '-h', '127.0.0.1', '-k', folder, '-c', 'max_connections=200'];
  const server = spawn(join(bin, 'postgres'), ['-D', folder, ...settings], { ...user, cwd: folder, stdio: 'ignore' });
  const endWithUs = () => void server.kill('SIGQUIT');
  process.once('exit', endWithUs);
  const urlOf = (database: string) => `postgresql://postgres@127.0.0.1:${port}/${database}`;
  await untilReady(server, urlOf('postgres'));
  let made = 0;
  return {
    createDatabase: async () => {
      const name = `test_${++made}`;
      await runOn(urlOf('postgres'), `create database ${name}`);
      return urlOf(name);
    },
    stop: async () => {
      process.off('exit', endWithUs);
      const ended = new Promise((resolve) => server.once('exit', resolve));
      server.kill('SIGINT');
      await ended;
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** What `initdb` makes, from a copy that is made once: it takes a second, and dozens of suites want a server of their own. */
function makeCluster(bin: string, folder: string, user: Ran): void {
  const version = execFileSync(join(bin, 'initdb'), ['--version'], { encoding: 'utf8' }).trim().replaceAll(/\W+/g, '-');
  const made = join(import.meta.dirname, '../../node_modules/.cache/rigledger', `cluster-${version}`);
  if (existsSync(made)) {
    copy(made, folder);
    return;
  }
  const args = ['-D', folder, '-U', 'postgres', '-A', 'trust', '-E', 'UTF8', '--no-sync'];
  execFileSync(join(bin, 'initdb'), args, { ...user, cwd: folder, stdio: ['ignore', 'ignore', 'inherit'] });
  mkdirSync(dirname(made), { recursive: true });
  const half = mkdtempSync(`${made}.`);
  copy(folder, half);
  keepOnce(half, made);
}

/** With owners and rights, on which Postgres insists. */
const copy = (from: string, to: string): void => void execFileSync('cp', ['-a', `${from}/.`, to]);

/** Postgres refuses to run as root: then it runs as the user `postgres` of its Debian package, who is given the folder. */
function whoRuns(folder: string): Ran {
  if (process.getuid?.() !== 0) return {};
  const idOf = (flag: string) => Number(execFileSync('id', [flag, 'postgres'], { encoding: 'utf8' }));
  const [uid, gid] = [idOf('-u'), idOf('-g')];
  chownSync(folder, uid, gid);
  return { uid, gid };
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer().once('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      server.close(() =>
        typeof address === 'object' && address ? resolve(address.port) : reject(new Error('no port')),
      );
    });
  });
}

async function untilReady(server: ChildProcess, url: string): Promise<void> {
  for (let attempt = 0; attempt < 300; attempt++) {
    if (server.exitCode !== null) throw new Error(`Postgres ended at once with code ${server.exitCode}`);
    try {
      return await runOn(url, 'select 1');
    } catch {
      await pause(100);
    }
  }
  throw new Error('Postgres did not answer within 30 s');
}

async function runOn(url: string, statement: string): Promise<void> {
  const client = new pg.Client({ connectionString: url });
  client.on('error', () => undefined);
  await client.connect();
  try {
    await client.query(statement);
  } finally {
    await client.end();
  }
}
