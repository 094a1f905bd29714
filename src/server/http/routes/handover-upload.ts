import { ok, type Result, refuse } from '#base/result.ts';
import { CAPS } from '#wire/caps.ts';
import { ReceiveFile } from '#wire/handovers.ts';
import type { Refusal } from '#wire/refusal.ts';
import { handoverRefusalSentence } from '#words/handover-file.ts';
import { HTTP_SENTENCES } from '#words/http.ts';
import { REFUSAL_SENTENCES } from '#words/refusals.ts';
import { may } from '../../access/policy.ts';
import { standingInCrew } from '../../access/standing.ts';
import type { TakenHandover } from '../../handover/handover-job.ts';
import type { HandoverWorkers } from '../../handover/handover-workers.ts';
import { lookAtFile } from '../../tasks/handover/look-at-file.ts';
import { receiveFile } from '../../tasks/handover/receive-file.ts';
import { newestOfCrew } from '../../tasks/library/newest-revisions.ts';
import type { TaskContext } from '../../tasks/task-context.ts';
import type { ApiRequest, Route } from '../api-request.ts';
import { json, refusal } from '../json.ts';
import { createPlaces, type Places } from '../places.ts';
import { noPlace } from './no-place.ts';

interface Options {
  readonly tasks: TaskContext;
  readonly handovers: HandoverWorkers;
}

interface Taking extends Options {
  readonly places: Places;
}

/** Somebody who sends a file to a crew of theirs. */
interface Sender {
  readonly crewId: string;
  readonly by: { readonly id: string; readonly name: string };
}

/**
 * `POST /api/crews/:crewId/handovers/look`: what a handover file brings; nothing is kept of it. `POST /api/crews/:crewId/handovers?name=…`:
 * the same file made a rig of the crew; refused, it changes nothing.
 */
export function handoverUploadRoutes(options: Options): readonly Route[] {
  const places = createPlaces({ each: CAPS.handoverFilesPerPerson, all: CAPS.handoverFilesAtOnce });
  const taking = { ...options, places };
  return [
    {
      method: 'POST',
      path: '/api/crews/:crewId/handovers/look',
      takes: 'file',
      handle: (request) => takeUpload(request, taking, look),
    },
    {
      method: 'POST',
      path: '/api/crews/:crewId/handovers',
      takes: 'file',
      handle: (request) => takeUpload(request, taking, take),
    },
  ];
}

type Use = (request: ApiRequest, options: Options, sender: Sender, taken: TakenHandover) => Promise<Response>;

/** Who may not, hears so before a byte of the file is read. */
async function takeUpload(request: ApiRequest, taking: Taking, use: Use): Promise<Response> {
  const { crewId = '' } = request.params;
  const user = await request.user();
  const standing = user ? await maySend(taking.tasks, crewId, user.id) : refuse('no-such-crew' as const);
  if (!user || !standing.ok) return refused(standing.ok ? 'no-such-crew' : standing.error);
  if (!/^application\/(octet-stream|zip|x-zip-compressed)\b/i.test(request.contentType))
    return refusal(415, 'not-a-file', HTTP_SENTENCES.notAFile);
  const place = taking.places.take(user.id);
  if (!place.ok) {
    // Read and thrown away, or the answer would be lost with the connection.
    await request.file({ bytes: 0, ms: CAPS.apiBodyMs });
    return noPlace(place.error, CAPS.handoverFilesPerPerson);
  }
  try {
    return await readUpload(request, taking, { crewId, by: user }, use);
  } finally {
    place.value();
  }
}

async function readUpload(request: ApiRequest, options: Options, sender: Sender, use: Use): Promise<Response> {
  const { tasks, handovers } = options;
  const file = await request.file({ bytes: CAPS.handoverFile, ms: CAPS.handoverFileMs });
  if (!file.ok) return file.error;
  const read = await handovers.read(file.value, await newestOfCrew(tasks.store, sender.crewId));
  if (!read.ok) return refusal(422, read.error.code, handoverRefusalSentence(read.error));
  // A file is a while on its way: whoever sent it may have been removed meanwhile.
  const still = await maySend(tasks, sender.crewId, sender.by.id);
  return still.ok ? use(request, options, sender, read.value) : refused(still.error);
}

const look: Use = async (_request, { tasks }, { crewId, by }, taken) =>
  json(200, await lookAtFile(tasks, { crewId, userId: by.id, taken }));

const take: Use = async ({ url }, { tasks }, sender, taken) => {
  const asked = ReceiveFile.safeParse({ venueId: null, ...Object.fromEntries(url.searchParams) });
  if (!asked.success)
    return refusal(400, 'bad-request', asked.error.issues[0]?.message ?? HTTP_SENTENCES.notUnderstood);
  const received = await receiveFile(tasks, { ...sender, ...asked.data, taken });
  return received.ok ? json(200, received.value) : refused(received.error);
};

/** Who is not signed in, and who is not of the crew, hears what one hears of a crew that does not exist. */
async function maySend(
  { store }: TaskContext,
  crewId: string,
  userId: string,
): Promise<Result<null, 'no-such-crew' | 'role-too-low'>> {
  const crew = await standingInCrew(store, userId, crewId);
  if (!crew) return refuse('no-such-crew');
  return may(crew.role, 'rig.create') ? ok(null) : refuse('role-too-low');
}

const STATUS: Partial<Record<Refusal, number>> = { 'no-such-crew': 404, 'no-such-venue': 404, 'role-too-low': 403 };
const refused = (code: Refusal) => refusal(STATUS[code] ?? 409, code, REFUSAL_SENTENCES[code]);
