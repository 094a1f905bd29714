// `npm start`: on a fresh clone installs and builds first; then, and every other time at once, becomes the server.
import { buildAll, installPackages, requireNode } from './set-up.mjs';

requireNode();
installPackages();
buildAll();
process.env.NODE_ENV = 'production';
process.setSourceMapsEnabled(true);
await import(new URL('../../dist/server.mjs', import.meta.url).href);
