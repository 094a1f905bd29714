import { handoverFileName } from '#exchange/handover/file-name.ts';
import { CAPS } from '#wire/caps.ts';
import { WriteHandoverFile } from '#wire/handovers.ts';
import type { Refusal } from '#wire/refusal.ts';
import { REFUSAL_SENTENCES } from '#words/refusals.ts';
import { may } from '../../access/policy.ts';
import { standingOnRig } from '../../access/standing.ts';
import type { HandoverWorkers } from '../../handover/handover-workers.ts';
import { auditEntry } from '../../tasks/audit/audit-entry.ts';
import { revisionToWrite } from '../../tasks/handover/revision-to-write.ts';
import type { TaskContext } from '../../tasks/task-context.ts';
import type { ApiRequest, Route } from '../api-request.ts';
import { attachment } from '../attachment.ts';
import { refusal } from '../json.ts';
import { parseBody } from '../parse-body.ts';
import { createPlaces, type Places } from '../places.ts';
import { noPlace } from './no-place.ts';

interface Options {
  readonly tasks: TaskContext;
  readonly handovers: HandoverWorkers;
}

/** `POST /api/rigs/:rigId/revisions/:number/handover-file`: a revision as one file for another installation, with the giver's words. */
export function handoverFileRoute(options: Options): Route {
  const places = createPlaces({ each: CAPS.handoverFilesPerPerson, all: CAPS.handoverFilesAtOnce });
  return {
    method: 'POST',
    path: '/api/rigs/:rigId/revisions/:number/handover-file',
    handle: (request) => sendFile(request, options, places),
  };
}

async function sendFile(request: ApiRequest, options: Options, places: Places): Promise<Response> {
  const { rigId = '', number = '' } = request.params;
  const user = await request.user();
  const standing = user ? await standingOnRig(options.tasks.store, user.id, rigId) : undefined;
  // Who is not signed in hears what a stranger hears.
  if (!user || !standing) return refused(404, 'no-such-rig');
  if (!may(standing.role, 'handover.offer')) return refused(403, 'role-too-low');
  const asked = parseBody(WriteHandoverFile, request.body);
  if (!asked.ok) return asked.error;
  if (!/^[1-9]\d{0,6}$/.test(number)) return refused(404, 'no-such-rig-revision');
  const place = places.take(user.id);
  if (!place.ok) return noPlace(place.error, CAPS.handoverFilesPerPerson);
  try {
    const { crewId, rigName: rig } = standing;
    const who = { crewId, rigId, by: user, kind: 'handover-written', what: { rig, number: Number(number) } } as const;
    return await writeFile(options, who, asked.value.words);
  } finally {
    place.value();
  }
}

interface Writing {
  readonly crewId: string;
  readonly rigId: string;
  readonly by: { readonly id: string; readonly name: string };
  readonly kind: 'handover-written';
  readonly what: { readonly rig: string; readonly number: number };
}

async function writeFile({ tasks, handovers }: Options, writing: Writing, words: string): Promise<Response> {
  const { rigId, by, what } = writing;
  const found = await revisionToWrite(tasks, { rigId, number: what.number, words, by: by.name });
  if (found === undefined) return refused(404, 'no-such-rig-revision');
  const written = await handovers.write(found);
  if (!written.ok) return refused(409, written.error);
  await auditEntry(tasks.store.prisma, { ...writing, at: new Date(tasks.clock.now()) });
  return new Response(written.value, {
    headers: {
      'content-type': 'application/zip',
      'content-disposition': attachment(handoverFileName(what.rig, what.number)),
      'cache-control': 'no-store',
    },
  });
}

const refused = (status: number, code: Refusal) => refusal(status, code, REFUSAL_SENTENCES[code]);
