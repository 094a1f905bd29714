import type { Clock } from '#base/clock.ts';
import { readRig } from '#document/read/rig-reader.ts';
import { checkRig } from '#engine/check/check-rig.ts';
import type { Finding } from '#engine/model/finding.ts';
import type { Rig } from '#engine/model/rig.ts';
import { makeSheet } from '#engine/sheet/make-sheet.ts';
import { SHEET_KINDS, type SheetKind } from '#engine/sheet/sheet.ts';
import { copiedTypes } from '#engine/type/copied-types.ts';
import { writeSheet } from '#exchange/csv/write-sheet.ts';
import { HTTP_SENTENCES } from '#words/http.ts';
import { REFUSAL_SENTENCES } from '#words/refusals.ts';
import { NOTHING_STANDS, sheetFileName, sheetHead, sheetHeading, sheetPartTitle, standingOf } from '#words/sheets.ts';
import { may } from '../../access/policy.ts';
import { standingOnRig } from '../../access/standing.ts';
import type { Store } from '../../db/store.ts';
import type { SyncService } from '../../sync/sync-service.ts';
import { auditEntry } from '../../tasks/audit/audit-entry.ts';
import { newestRevisions } from '../../tasks/library/newest-revisions.ts';
import type { ApiRequest, Route } from '../api-request.ts';
import { refusal } from '../json.ts';

export interface SheetOptions {
  readonly store: Store;
  readonly sync: Pick<SyncService, 'readRig'>;
  readonly clock: Clock;
}

/** `GET /api/rigs/:rigId/sheets/:sheet`: a sheet of a rig as it is now, such as `patch.csv`; with `?bom=1` marked as UTF-8. */
export function sheetRoute(options: SheetOptions): Route {
  return {
    method: 'GET',
    path: '/api/rigs/:rigId/sheets/:sheet',
    handle: (request) => sendSheet(request, options),
  };
}

async function sendSheet(request: ApiRequest, { store, sync, clock }: SheetOptions): Promise<Response> {
  const { rigId = '', sheet = '' } = request.params;
  const user = await request.user();
  const standing = user ? await standingOnRig(store, user.id, rigId) : undefined;
  // Who is not signed in hears what a stranger hears.
  if (!user || !standing || !may(standing.role, 'rig.read'))
    return refusal(404, 'no-such-rig', REFUSAL_SENTENCES['no-such-rig']);
  const kind = SHEET_KINDS.find((known) => `${known}.csv` === sheet);
  if (!kind) return refusal(404, 'no-such-sheet', HTTP_SENTENCES.noSuchSheet);
  const rig = await sync.readRig(rigId, readRig);
  if (!rig) return refusal(404, 'no-such-rig', REFUSAL_SENTENCES['no-such-rig']);
  const at = clock.now();
  const newest = await newestRevisions(store, { crewId: standing.crewId, typeIds: copiedTypes(rig) });
  const findings = checkRig(rig, newest);
  const text = csvOf(rig, { kind, name: standing.rigName, at, findings });
  const { crewId, rigName } = standing;
  const what = { rig: rigName, sheet: kind };
  await auditEntry(store.prisma, { crewId, by: user, at: new Date(at), kind: 'sheet-out', rigId, what });
  const mark = request.url.searchParams.get('bom') === '1' ? '\ufeff' : '';
  return new Response(streamOf(mark, text), {
    headers: {
      'content-type': 'text/csv; charset=utf-8',
      'content-disposition': `attachment; filename="${sheetFileName(kind, standing.rigName, at)}"`,
      'cache-control': 'no-store',
    },
  });
}

interface SheetOf {
  readonly kind: SheetKind;
  readonly name: string;
  readonly at: number;
  readonly findings: readonly Finding[];
}

function csvOf(rig: Rig, { kind, name, at, findings }: SheetOf): Iterable<string> {
  const sheet = makeSheet(kind, rig, standingOf(rig, findings, dayOf(at)));
  return writeSheet(sheet, {
    head: sheetHead(kind, name, at),
    heading: sheetHeading,
    part: sheetPartTitle,
    nothingStands: NOTHING_STANDS,
  });
}

/** The day of an instant, `2026-11-25`, in UTC as all times of a sheet are. */
const dayOf = (at: number) => new Date(at).toISOString().slice(0, 10);

/** Text as bytes that are made while they are sent. */
function streamOf(mark: string, chunks: Iterable<string>): ReadableStream<Uint8Array> {
  const encoder = new TextEncoder();
  const rest = chunks[Symbol.iterator]();
  let first = mark;
  return new ReadableStream({
    pull: (to) => {
      const next = rest.next();
      if (next.done) return to.close();
      to.enqueue(encoder.encode(first + next.value));
      first = '';
    },
  });
}
