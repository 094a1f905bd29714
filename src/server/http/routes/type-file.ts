import type { Clock } from '#base/clock.ts';
import { gdtfFileName } from '#exchange/gdtf/export-gdtf.ts';
import { REFUSAL_SENTENCES } from '#words/refusals.ts';
import { may } from '../../access/policy.ts';
import { standingInCrew } from '../../access/standing.ts';
import type { Store } from '../../db/store.ts';
import type { GdtfWorkers } from '../../gdtf/gdtf-workers.ts';
import { auditEntry } from '../../tasks/audit/audit-entry.ts';
import { readRevision } from '../../tasks/library/read-type.ts';
import type { ApiRequest, Route } from '../api-request.ts';
import { attachment } from '../attachment.ts';
import { refusal } from '../json.ts';

export interface TypeFileOptions {
  readonly store: Store;
  readonly clock: Clock;
  readonly gdtf: GdtfWorkers;
}

/** `GET /api/crews/:crewId/types/:typeId/:file`: a revision of a type as a `.gdtf` file; `r3.gdtf` is the third. */
export function typeFileRoute(options: TypeFileOptions): Route {
  return {
    method: 'GET',
    path: '/api/crews/:crewId/types/:typeId/:file',
    handle: (request) => sendFile(request, options),
  };
}

async function sendFile(request: ApiRequest, { store, clock, gdtf }: TypeFileOptions): Promise<Response> {
  const { crewId = '', typeId = '', file = '' } = request.params;
  const user = await request.user();
  const crew = user ? await standingInCrew(store, user.id, crewId) : undefined;
  // Who is not signed in hears what a stranger hears.
  if (!user || !crew || !may(crew.role, 'type.read'))
    return refusal(404, 'no-such-crew', REFUSAL_SENTENCES['no-such-crew']);
  const number = Number(/^r(0|[1-9]\d{0,6})\.gdtf$/.exec(file)?.[1] ?? Number.NaN);
  const revision = Number.isNaN(number) ? undefined : await readRevision(store, { crewId, typeId, number });
  if (!revision) return refusal(404, 'no-such-revision', REFUSAL_SENTENCES['no-such-revision']);
  const { maker, model } = revision.type;
  const what = { type: `${maker} ${model}`.trim(), number };
  const bytes = await gdtf.write(JSON.stringify(revision.type));
  await auditEntry(store.prisma, { crewId, by: user, at: new Date(clock.now()), kind: 'type-out', what });
  return new Response(bytes, {
    headers: {
      'content-type': 'application/zip',
      'content-disposition': attachment(gdtfFileName(revision.type).replace(/\.gdtf$/, `@r${number}.gdtf`)),
      'cache-control': 'no-store',
    },
  });
}
