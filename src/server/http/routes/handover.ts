import { REVISION_PARTS } from '#wire/record.ts';
import { REFUSAL_SENTENCES } from '#words/refusals.ts';
import { findOffer } from '../../tasks/handover/find-offer.ts';
import { revisionBytes } from '../../tasks/record/read-revisions.ts';
import type { TaskContext } from '../../tasks/task-context.ts';
import type { ApiRequest, Route } from '../api-request.ts';
import { refusal } from '../json.ts';
import { revisionAnswer } from './revision.ts';

interface Options {
  readonly tasks: TaskContext;
}

/** `GET /api/handovers/:token/:part`: the offered revision or its findings, to whoever holds the link of an offer they may see. */
export function handoverRoute(options: Options): Route {
  return { method: 'GET', path: '/api/handovers/:token/:part', handle: (request) => sendOffered(request, options) };
}

async function sendOffered(request: ApiRequest, { tasks }: Options): Promise<Response> {
  const { token = '', part = '' } = request.params;
  const user = await request.user();
  const offer = user ? await findOffer(tasks, { token, userId: user.id }) : undefined;
  const known = REVISION_PARTS.find((each) => each === part);
  const bytes = offer && known ? await revisionBytes(tasks.store, { ...offer, part: known }) : undefined;
  // Who is not signed in, and who asks for an offer that is closed, hears what one hears of a link that never was.
  if (!bytes) return refusal(404, 'no-such-handover', REFUSAL_SENTENCES['no-such-handover']);
  return revisionAnswer(bytes);
}
