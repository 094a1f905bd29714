// Run as a process of its own: takes a data folder, says how that went, and holds it until it is killed.

import { StartRefused } from '#server/config/start-refused.ts';
import { openEmbedded } from '#server/db/open-embedded.ts';

const [folder = '', prismaFolder = ''] = process.argv.slice(2);
try {
  await openEmbedded(folder, { prismaFolder });
  console.log('held');
  setInterval(() => undefined, 1_000);
} catch (error) {
  if (!(error instanceof StartRefused)) throw error;
  console.log(error.message);
  process.exit(1);
}
