import { ok, type Result, refuse } from '#base/result.ts';
import { CAPS } from '#wire/caps.ts';
import type { FileTaken } from '#wire/library.ts';
import type { Refusal } from '#wire/refusal.ts';
import { gdtfRefusalSentence } from '#words/gdtf.ts';
import { HTTP_SENTENCES } from '#words/http.ts';
import { REFUSAL_SENTENCES } from '#words/refusals.ts';
import { may } from '../../access/policy.ts';
import { standingInCrew } from '../../access/standing.ts';
import type { FileRefusal } from '../../gdtf/gdtf-job.ts';
import type { GdtfWorkers } from '../../gdtf/gdtf-workers.ts';
import { takeFile } from '../../tasks/library/take-file.ts';
import type { TaskContext } from '../../tasks/task-context.ts';
import type { ApiRequest, Route } from '../api-request.ts';
import { json, refusal } from '../json.ts';
import { createPlaces, type Places } from '../places.ts';
import { noPlace } from './no-place.ts';

export interface TypeUploadOptions {
  readonly tasks: TaskContext;
  readonly gdtf: GdtfWorkers;
}

/**
 * `POST /api/crews/:crewId/types?name=…`: a `.gdtf` file, whose name counts only when it names no model itself. It becomes a type of the
 * crew's library or a revision of one; refused, it changes nothing.
 */
export function typeUploadRoute({ tasks, gdtf }: TypeUploadOptions): Route {
  const places = createPlaces({ each: CAPS.typeFilesPerPerson, all: CAPS.typeFilesAtOnce });
  return {
    method: 'POST',
    path: '/api/crews/:crewId/types',
    takes: 'file',
    handle: (request) => takeUpload(request, { tasks, gdtf, places }),
  };
}

interface Taking extends TypeUploadOptions {
  readonly places: Places;
}

/** Who may not, hears so before a byte of the file is read. */
async function takeUpload(request: ApiRequest, taking: Taking): Promise<Response> {
  const { crewId = '' } = request.params;
  const user = await request.user();
  const crew = user ? await standingInCrew(taking.tasks.store, user.id, crewId) : undefined;
  // Who is not signed in hears what a stranger hears.
  if (!user || !crew) return refusal(404, 'no-such-crew', REFUSAL_SENTENCES['no-such-crew']);
  if (!may(crew.role, 'type.write')) return refusal(403, 'role-too-low', REFUSAL_SENTENCES['role-too-low']);
  if (!FILE_TYPES.test(request.contentType)) return refusal(415, 'not-a-file', HTTP_SENTENCES.notAFile);
  const place = taking.places.take(user.id);
  if (!place.ok) {
    // Read and thrown away, or the answer would be lost with the connection.
    await request.file({ bytes: 0, ms: CAPS.apiBodyMs });
    return noPlace(place.error, CAPS.typeFilesPerPerson);
  }
  try {
    return await readUpload(request, taking, { crewId, userId: user.id });
  } finally {
    place.value();
  }
}

const FILE_TYPES = /^application\/(octet-stream|zip|x-zip-compressed)\b/i;

async function readUpload(
  request: ApiRequest,
  { tasks, gdtf }: Taking,
  who: { readonly crewId: string; readonly userId: string },
): Promise<Response> {
  const file = await request.file({ bytes: CAPS.typeFile, ms: CAPS.typeFileMs });
  if (!file.ok) return file.error;
  const content = await gdtf.read(file.value, request.url.searchParams.get('name') ?? '');
  if (!content.ok) return refusal(422, content.error.code, sentenceOf(content.error));
  const stillMay = await mayStill(tasks, who);
  if (!stillMay.ok) return refusal(STATUS[stillMay.error] ?? 409, stillMay.error, REFUSAL_SENTENCES[stillMay.error]);
  const taken = await takeFile(tasks, { ...who, content: content.value });
  if (!taken.ok) return refusal(409, taken.error, REFUSAL_SENTENCES[taken.error]);
  const answer: FileTaken = { ...taken.value, report: JSON.parse(content.value.report ?? 'null') };
  return json(200, answer);
}

const STATUS: Partial<Record<Refusal, number>> = { 'no-such-crew': 404, 'role-too-low': 403 };

/** A file is minutes on its way: whoever sent it may have been removed meanwhile. */
async function mayStill(
  { store }: TaskContext,
  { crewId, userId }: { readonly crewId: string; readonly userId: string },
): Promise<Result<null, Refusal>> {
  const crew = await standingInCrew(store, userId, crewId);
  if (!crew) return refuse('no-such-crew');
  return may(crew.role, 'type.write') ? ok(null) : refuse('role-too-low');
}

function sentenceOf(error: FileRefusal): string {
  if (error.code === 'type-unnamed' || error.code === 'type-too-large') return REFUSAL_SENTENCES[error.code];
  return gdtfRefusalSentence(error);
}
