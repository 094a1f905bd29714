import { CAPS } from '#wire/caps.ts';
import { ARCHIVE_IN_PATH } from '#wire/crew-archive.ts';
import type { Refusal } from '#wire/refusal.ts';
import { archiveSentence } from '#words/archive.ts';
import { HTTP_SENTENCES } from '#words/http.ts';
import { REFUSAL_SENTENCES } from '#words/refusals.ts';
import type { ArchiveTrouble } from '../../tasks/archive/archive-refused.ts';
import { bringIn } from '../../tasks/archive/bring-in.ts';
import type { Doer } from '../../tasks/audit/doer.ts';
import type { TaskContext } from '../../tasks/task-context.ts';
import type { ApiRequest, Route } from '../api-request.ts';
import { json, refusal } from '../json.ts';
import { createPlaces, type Places } from '../places.ts';

/** `POST /api/archives`: the archive of a crew, which becomes a new crew of whoever sends it; refused, it changes nothing. */
export function archiveInRoute({ tasks }: { readonly tasks: TaskContext }): Route {
  const places = createPlaces({ each: CAPS.archivesPerPerson, all: CAPS.archivesAtOnce });
  return { method: 'POST', path: ARCHIVE_IN_PATH, takes: 'file', handle: (request) => take(request, tasks, places) };
}

const FILE_TYPES = /^application\/(octet-stream|zip|x-zip-compressed)\b/i;

async function take(request: ApiRequest, tasks: TaskContext, places: Places): Promise<Response> {
  const user = await request.user();
  if (!user) return refusal(401, 'signed-out', REFUSAL_SENTENCES['signed-out']);
  if (!FILE_TYPES.test(request.contentType)) return refusal(415, 'not-a-file', HTTP_SENTENCES.notAFile);
  const place = places.take(user.id);
  if (!place.ok) {
    // Read and thrown away, or the answer would be lost with the connection.
    await request.file({ bytes: 0, ms: CAPS.apiBodyMs });
    return refusal(429, 'too-many-archives', HTTP_SENTENCES.tooManyArchives);
  }
  try {
    return await takeFile(request, tasks, user);
  } finally {
    place.value();
  }
}

async function takeFile(request: ApiRequest, tasks: TaskContext, by: Doer): Promise<Response> {
  const file = await request.file({ bytes: CAPS.archiveFile, ms: CAPS.archiveFileMs });
  if (!file.ok) return file.error;
  const taken = await bringIn(tasks, { bytes: file.value, by });
  if (taken.ok) return json(200, taken.value);
  const { code } = taken.error;
  return refusal(code in REFUSAL_SENTENCES ? 409 : 422, code, sentenceOf(taken.error));
}

function sentenceOf(trouble: ArchiveTrouble): string {
  return isOurs(trouble) ? REFUSAL_SENTENCES[trouble.code] : archiveSentence(trouble);
}

const isOurs = (trouble: ArchiveTrouble): trouble is { readonly code: Refusal } => trouble.code in REFUSAL_SENTENCES;
