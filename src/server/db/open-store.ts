import { join } from 'node:path';
import { openEmbedded } from './open-embedded.ts';
import { openPostgres } from './open-postgres.ts';
import type { Store } from './store.ts';

/** Where the data is: in a folder of this machine, or on a Postgres server. */
export type StoreConfig =
  | { readonly kind: 'embedded'; readonly folder: string }
  | { readonly kind: 'postgres'; readonly url: string };

/** Opens the store and brings it to this version. `root` is the folder of the program; `onLost` hears of broken connections. */
export function openStore(
  config: StoreConfig,
  { root, onLost }: { readonly root: string; readonly onLost: (error: Error) => void },
): Promise<Store> {
  const prismaFolder = join(root, 'prisma');
  return config.kind === 'embedded'
    ? openEmbedded(config.folder, { prismaFolder })
    : openPostgres(config.url, { prismaFolder, onLost });
}
