import { CAPS } from '#wire/caps.ts';
import { archiveFileName } from '#words/archive.ts';
import { HTTP_SENTENCES } from '#words/http.ts';
import { REFUSAL_SENTENCES } from '#words/refusals.ts';
import { may } from '../../access/policy.ts';
import { standingInCrew } from '../../access/standing.ts';
import { takeOut } from '../../tasks/archive/take-out.ts';
import type { TaskContext } from '../../tasks/task-context.ts';
import type { ApiRequest, Route } from '../api-request.ts';
import { attachment } from '../attachment.ts';
import { refusal } from '../json.ts';
import { createPlaces, type Places } from '../places.ts';

export interface ArchiveOutOptions {
  readonly tasks: TaskContext;
  readonly version: string;
}

/** `GET /api/crews/:crewId/archive`: everything of a crew as one zip, written while it is sent. For leads. */
export function archiveOutRoute({ tasks, version }: ArchiveOutOptions): Route {
  const places = createPlaces({ each: CAPS.archivesPerPerson, all: CAPS.archivesAtOnce });
  return {
    method: 'GET',
    path: '/api/crews/:crewId/archive',
    handle: (request) => sendArchive(request, { tasks, version, places }),
  };
}

interface Sending extends ArchiveOutOptions {
  readonly places: Places;
}

async function sendArchive(request: ApiRequest, { tasks, version, places }: Sending): Promise<Response> {
  const { crewId = '' } = request.params;
  const user = await request.user();
  const crew = user ? await standingInCrew(tasks.store, user.id, crewId) : undefined;
  // Who is not signed in hears what a stranger hears.
  if (!user || !crew) return refusal(404, 'no-such-crew', REFUSAL_SENTENCES['no-such-crew']);
  if (!may(crew.role, 'archive.take-out')) return refusal(403, 'role-too-low', REFUSAL_SENTENCES['role-too-low']);
  const place = places.take(user.id);
  if (!place.ok) return refusal(429, 'too-many-archives', HTTP_SENTENCES.tooManyArchives);
  const taken = await takeOut(tasks, { crewId, by: user, program: version }).catch((error: unknown) => {
    place.value();
    throw error;
  });
  if (!taken.ok) {
    place.value();
    return refusal(409, taken.error, REFUSAL_SENTENCES[taken.error]);
  }
  return new Response(streamOf(taken.value, place.value), {
    headers: {
      'content-type': 'application/zip',
      'content-disposition': attachment(archiveFileName(crew.crewName, tasks.clock.now())),
      'cache-control': 'no-store',
    },
  });
}

/** Bytes that are made while they are sent; `end` is called once, however it ends. */
function streamOf(chunks: AsyncGenerator<Uint8Array, void>, end: () => void): ReadableStream<Uint8Array> {
  let ended = false;
  const finish = () => {
    if (!ended) end();
    ended = true;
  };
  return new ReadableStream({
    pull: async (to) => {
      try {
        const next = await chunks.next();
        if (!next.done) return to.enqueue(next.value);
        finish();
        to.close();
      } catch (error) {
        finish();
        throw error;
      }
    },
    cancel: async () => {
      finish();
      await chunks.return();
    },
  });
}
