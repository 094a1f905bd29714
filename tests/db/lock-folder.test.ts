import { existsSync, utimesSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { present } from '#base/assert.ts';
import { StartRefused } from '#server/config/start-refused.ts';
import { lockFolder } from '#server/db/lock-folder.ts';
import { openEmbedded } from '#server/db/open-embedded.ts';
import { type SpawnedServer, spawnServer } from '#tests/support/spawn-server.ts';
import { seedDataFolder, temporaryFolder } from '#tests/support/store.ts';

const root = join(import.meta.dirname, '../..');
const prismaFolder = join(root, 'prisma');
const cleanUps: (() => void)[] = [];
afterEach(() => {
  for (const cleanUp of cleanUps.splice(0)) cleanUp();
});

function newFolder(): string {
  const { folder, remove } = temporaryFolder();
  cleanUps.push(remove);
  return folder;
}

/** Starts a server of its own on the folder; answers it once it holds the folder or has given up. */
async function holdElsewhere(DATA_DIR: string): Promise<{ server: SpawnedServer; address: string | undefined }> {
  const server = spawnServer({ DATA_DIR });
  cleanUps.push(server.kill);
  return { server, address: await server.address };
}

describe('the lock of a data folder', () => {
  it('lets one process in; a second gets a sentence and a non-zero exit; kill -9 frees it, and nothing is lost', async () => {
    const folder = newFolder();
    await seedDataFolder(folder);
    const first = await openEmbedded(folder, { prismaFolder });
    await first.prisma.setting.create({ data: { key: 'mine', value: 'kept' } });

    const second = await holdElsewhere(folder);
    expect(second.server.lines).toEqual([expect.stringContaining('is in use by another Rigledger')]);
    expect(second.server.lines[0]).toContain(`process ${process.pid}`);
    expect(await second.server.exit).toBe(1);
    await first.close();

    const third = await holdElsewhere(folder);
    expect(third.address).toBeDefined();
    await expect(openEmbedded(folder, { prismaFolder })).rejects.toThrow(StartRefused);
    third.server.kill();
    await third.server.exit;

    const again = await openEmbedded(folder, { prismaFolder });
    expect((await again.prisma.setting.findUniqueOrThrow({ where: { key: 'mine' } })).value).toBe('kept');
    await again.close();
  });

  it('goes with its holder, and leaves nothing behind', async () => {
    const folder = newFolder();
    const release = await lockFolder(folder);
    await expect(lockFolder(folder)).rejects.toThrow('in use');
    await release();
    expect(existsSync(join(folder, 'in-use'))).toBe(false);
    await (await lockFolder(folder))();
  });

  it('refuses a folder whose holder on another machine still beats, and takes one whose holder has stopped', async () => {
    const folder = newFolder();
    const file = join(folder, 'in-use');
    writeFileSync(file, JSON.stringify({ host: `not-${hostname()}`, pid: 1 }));
    const beat = setInterval(() => utimesSync(file, new Date(), new Date()), 200);
    cleanUps.push(() => clearInterval(beat));
    await expect(lockFolder(folder)).rejects.toThrow(`process 1 on not-${hostname()}`);
    clearInterval(beat);
    utimesSync(file, new Date(0), new Date(0));
    await (await lockFolder(folder))();
  });

  it('takes a folder whose holder left a file that was cut short', async () => {
    const folder = newFolder();
    writeFileSync(join(folder, 'in-use'), '{"host":');
    await (await lockFolder(folder))();
  });

  it('says what is wrong with a folder it cannot use', async () => {
    const folder = newFolder();
    writeFileSync(join(folder, 'file'), '');
    const opening = openEmbedded(join(folder, 'file'), { prismaFolder });
    const error = await opening.then(
      () => undefined,
      (reason: unknown) => reason,
    );
    expect(present(error, 'it opened')).toBeInstanceOf(StartRefused);
    expect(String(error)).toContain('cannot be used');
  });
});
