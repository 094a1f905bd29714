import { join } from 'node:path';
import { systemClock } from '#base/clock.ts';
import { randomId } from '#base/random-id.ts';
import { type Config, readConfig } from '#server/config/read-config.ts';
import { createLog } from '#server/log.ts';
import { type RunningServer, startServer } from '#server/start-server.ts';
import { startPostgres } from './postgres.ts';
import { type StoreKind, seedDataFolder, temporaryFolder } from './store.ts';
import { newVisitor, type Visitor } from './visitor.ts';

export interface TestServer {
  readonly running: RunningServer;
  readonly url: string;
  /** What the log has said so far. */
  readonly lines: readonly string[];
  /** Somebody who is not signed in. */
  visitor(): Visitor;
  /** Somebody who has just signed up. */
  person(name: string): Promise<Visitor>;
  stop(): Promise<void>;
}

const root = join(import.meta.dirname, '../..');

/** Starts the whole server but its pages on a store of its own and a free port. The demo is off unless asked for. */
export async function startTestServer(kind: StoreKind, changed: Partial<Config> = {}): Promise<TestServer> {
  const place = kind === 'postgres' ? await onPostgres() : await onFolder();
  const lines: string[] = [];
  const settings = readConfig(
    { PORT: '0', HOST: '127.0.0.1', DEMO: '0', SIGN_IN_ATTEMPTS: '100000', ...place.env },
    root,
  );
  const running = await startServer({
    config: { ...settings, ...changed },
    root,
    version: 'test',
    pages: 'none',
    clock: systemClock,
    makeId: randomId,
    log: createLog((line) => lines.push(line), systemClock.now),
  });
  const url = `http://127.0.0.1:${running.port}`;
  return {
    running,
    url,
    lines,
    visitor: () => newVisitor(url),
    person: async (name) => {
      const visitor = newVisitor(url);
      await visitor.signUp(name);
      return visitor;
    },
    stop: async () => {
      await running.stop();
      await place.remove();
    },
  };
}

interface Place {
  readonly env: Readonly<Record<string, string>>;
  remove(): Promise<void>;
}

async function onPostgres(): Promise<Place> {
  const postgres = await startPostgres();
  return { env: { DATABASE_URL: await postgres.createDatabase() }, remove: () => postgres.stop() };
}

async function onFolder(): Promise<Place> {
  const { folder, remove } = temporaryFolder();
  await seedDataFolder(folder);
  return { env: { DATA_DIR: folder }, remove: async () => remove() };
}
