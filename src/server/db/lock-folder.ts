import { createHash } from 'node:crypto';
import { readFile, realpath, rm, stat, utimes, writeFile } from 'node:fs/promises';
import { createServer, type Server } from 'node:net';
import { hostname, platform } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { START_SENTENCES } from '#words/start.ts';
import { StartRefused } from '../config/start-refused.ts';

const BEAT_MS = 2_000;
const STALE_MS = 5 * BEAT_MS;

/**
 * Takes a data folder for this process alone, until the answer is called or the process dies, by whatever death. Throws
 * `StartRefused` when another process holds it. On Linux the lock is an abstract socket, which the kernel frees; a file with a
 * heartbeat beside it covers other systems, and processes of other containers and machines that share the folder.
 */
export async function lockFolder(folder: string): Promise<() => Promise<void>> {
  const place = await realpath(folder);
  const file = join(place, 'in-use');
  const socket = platform() === 'linux' ? await holdSocket(place) : undefined;
  try {
    await waitForFile(file, { place, decidedBy: socket ? 'socket' : 'file' });
    await writeFile(file, JSON.stringify({ host: hostname(), pid: process.pid }));
  } catch (error) {
    socket?.close();
    throw error;
  }
  const beat = setInterval(() => void utimes(file, new Date(), new Date()).catch(() => clearInterval(beat)), BEAT_MS);
  beat.unref();
  return async () => {
    clearInterval(beat);
    await rm(file, { force: true });
    socket?.close();
  };
}

function holdSocket(place: string): Promise<Server> {
  const server = createServer((connection) => connection.destroy());
  // A socket's name has room for 107 bytes, a path may be longer.
  const name = `\0rigledger-${createHash('sha256').update(place).digest('hex')}`;
  return new Promise((resolve, reject) => {
    server.once('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'EADDRINUSE') void inUse(place).then(reject, reject);
      else reject(error);
    });
    server.listen(name, () => resolve(server.unref()));
  });
}

/** Returns once nobody holds the file: it is missing, its process is gone, or its heartbeat has stopped. */
async function waitForFile(
  file: string,
  { place, decidedBy }: { readonly place: string; readonly decidedBy: 'socket' | 'file' },
): Promise<void> {
  const before = await holderOf(file);
  if (!before) return;
  // A socket has shown already that nobody on this host holds the folder.
  if (before.host === hostname() && (decidedBy === 'socket' || !isAlive(before.pid))) return;
  while (Date.now() - before.beatAt < STALE_MS) {
    await pause(BEAT_MS / 2);
    const now = await holderOf(file);
    if (!now) return;
    if (now.beatAt !== before.beatAt) throw await inUse(place);
  }
}

interface Holder {
  readonly host: string;
  readonly pid: number;
  readonly beatAt: number;
}

async function holderOf(file: string): Promise<Holder | undefined> {
  try {
    const { host, pid } = JSON.parse(await readFile(file, 'utf8'));
    return { host: String(host), pid: Number(pid), beatAt: (await stat(file)).mtimeMs };
  } catch (error) {
    // No file, or one that a death cut short: nobody who lives wrote it.
    if (error instanceof SyntaxError || (error as NodeJS.ErrnoException).code === 'ENOENT') return undefined;
    throw error;
  }
}

async function inUse(place: string): Promise<StartRefused> {
  const holder = await holderOf(join(place, 'in-use'));
  const who = holder ? `process ${holder.pid} on ${holder.host}` : 'another process';
  return new StartRefused(START_SENTENCES.folderInUse(place, who));
}

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}
