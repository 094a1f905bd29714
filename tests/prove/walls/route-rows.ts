import { randomId } from '#base/random-id.ts';
import { ARCHIVE_IN_PATH, archivePath } from '#wire/crew-archive.ts';
import { handoverFileLookPath, handoverFilePath, handoverFileTakePath, handoverPath } from '#wire/handovers.ts';
import { momentPath } from '#wire/history.ts';
import { typeFilePath, typeUploadPath } from '#wire/library.ts';
import { REVISION_PARTS, revisionPath } from '#wire/record.ts';
import type { Expected } from './procedure-rows.ts';
import type { World } from './world.ts';

/** What is true of one address below /api, whoever asks. Procedures have rows of their own. */
export interface RouteRow {
  readonly path: (world: World) => string;
  readonly missing?: () => string;
  /** Addresses of what is closed, which has to answer everybody exactly as what never was. */
  readonly closed?: (world: World) => { readonly paths: readonly string[]; readonly gone: string };
  readonly body?: unknown;
  readonly headers?: Readonly<Record<string, string>>;
  /** The address holds a secret: whoever knows it may read what it is of. */
  readonly isLink?: true;
  /** The status each gets. */
  readonly expected: Expected;
}

const all = (status: string): Expected => ({
  nobody: status,
  reader: status,
  editor: status,
  lead: status,
  'foreign lead': status,
  'removed member': status,
});

/** A file sent to a crew by those who may write there. */
const fileRow = (pathOf: (crewId: string) => string): RouteRow => ({
  path: ({ crewId }) => pathOf(crewId),
  missing: () => pathOf(randomId()),
  body: 'no archive',
  headers: { 'content-type': 'application/octet-stream' },
  expected: { ...all('422'), reader: '403', nobody: '404', 'foreign lead': '404', 'removed member': '404' },
});

/** The rows, by method and path of the route. A route that is not here fails the proof. */
export const ROUTE_ROWS: Readonly<Record<string, RouteRow>> = {
  'GET /api/health': { path: () => '/api/health', expected: all('200') },
  'GET /api/auth/get-session': { path: () => '/api/auth/get-session', expected: all('200') },
  'POST /api/auth/sign-up/email': { path: () => '/api/auth/sign-up/email', body: {}, expected: all('400') },
  'POST /api/auth/sign-in/email': {
    path: () => '/api/auth/sign-in/email',
    body: { email: 'x@crew.example', password: 'not the password' },
    expected: all('401'),
  },
  'POST /api/auth/sign-out': { path: () => '/api/auth/sign-out', body: {}, expected: all('200') },
  // The server under proof has no demo: its door is not there for anybody.
  'POST /api/demo/enter': { path: () => '/api/demo/enter', body: { as: 'designer' }, expected: all('404') },
  'GET /api/trpc/:procedures': { path: () => '/api/trpc/no.such', expected: all('404') },
  'POST /api/trpc/:procedures': { path: () => '/api/trpc/no.such', body: {}, expected: all('404') },
  // Garbage, so that the library stays as it is: who may send a file hears what is wrong with it.
  'POST /api/crews/:crewId/types': fileRow(typeUploadPath),
  'GET /api/crews/:crewId/archive': {
    path: ({ crewId }) => archivePath(crewId),
    missing: () => archivePath(randomId()),
    expected: { ...all('404'), reader: '403', editor: '403', lead: '200' },
  },
  // Garbage: whoever is signed in hears what is wrong with it.
  'POST /api/archives': {
    path: () => ARCHIVE_IN_PATH,
    body: 'no archive',
    headers: { 'content-type': 'application/octet-stream' },
    expected: { ...all('422'), nobody: '401' },
  },
  'GET /api/crews/:crewId/types/:typeId/:file': {
    path: ({ crewId, typeId }) => typeFilePath(crewId, typeId, 1),
    missing: () => typeFilePath(randomId(), randomId(), 1),
    expected: { ...all('200'), nobody: '404', 'foreign lead': '404', 'removed member': '404' },
  },
  // Whoever holds the link of an open offer may read what is offered, once signed in.
  'GET /api/handovers/:token/:part': {
    path: ({ handoverToken }) => handoverPath(handoverToken, 'rig'),
    closed: ({ closedTokens }) => ({
      paths: closedTokens.flatMap((token) => REVISION_PARTS.map((part) => handoverPath(token, part))),
      gone: handoverPath(`${randomId()}${randomId()}`, 'rig'),
    }),
    isLink: true,
    expected: { ...all('200'), nobody: '404' },
  },
  'POST /api/rigs/:rigId/revisions/:number/handover-file': {
    path: ({ rigId }) => handoverFilePath(rigId, 1),
    missing: () => handoverFilePath(randomId(), 1),
    body: { words: 'Yours' },
    expected: { ...all('200'), reader: '403', nobody: '404', 'foreign lead': '404', 'removed member': '404' },
  },
  // Garbage, so that the crew stays as it is: who may send a file hears what is wrong with it.
  'POST /api/crews/:crewId/handovers/look': fileRow(handoverFileLookPath),
  'POST /api/crews/:crewId/handovers': fileRow(handoverFileTakePath),
  'GET /api/rigs/:rigId/revisions/:number/:part': {
    path: ({ rigId }) => revisionPath(rigId, 1, 'rig'),
    missing: () => revisionPath(randomId(), 1, 'rig'),
    expected: { ...all('200'), nobody: '404', 'foreign lead': '404', 'removed member': '404' },
  },
  'GET /api/rigs/:rigId/moments/:seq': {
    path: ({ rigId }) => momentPath(rigId, 1),
    missing: () => momentPath(randomId(), 1),
    expected: { ...all('200'), nobody: '404', 'foreign lead': '404', 'removed member': '404' },
  },
  'GET /api/rigs/:rigId/sheets/:sheet': {
    path: ({ rigId }) => `/api/rigs/${rigId}/sheets/patch.csv`,
    missing: () => `/api/rigs/${randomId()}/sheets/patch.csv`,
    expected: { ...all('200'), nobody: '404', 'foreign lead': '404', 'removed member': '404' },
  },
};

/** Addresses that are worth a session of its own: signing out ends it. */
export const ENDS_SESSION: ReadonlySet<string> = new Set(['POST /api/auth/sign-out']);
