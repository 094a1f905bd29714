import { REVISION_PARTS } from '#wire/record.ts';
import { REFUSAL_SENTENCES } from '#words/refusals.ts';
import { may } from '../../access/policy.ts';
import { standingOnRig } from '../../access/standing.ts';
import type { Store } from '../../db/store.ts';
import { revisionBytes } from '../../tasks/record/read-revisions.ts';
import type { ApiRequest, Route } from '../api-request.ts';
import { refusal } from '../json.ts';

/** `GET /api/rigs/:rigId/revisions/:number/:part`: a frozen rig or its findings as JSON, sent as it is stored: deflated. */
export function revisionRoute(options: { readonly store: Store }): Route {
  return {
    method: 'GET',
    path: '/api/rigs/:rigId/revisions/:number/:part',
    handle: (request) => sendRevision(request, options),
  };
}

async function sendRevision(request: ApiRequest, { store }: { readonly store: Store }): Promise<Response> {
  const { rigId = '', number = '', part = '' } = request.params;
  const user = await request.user();
  const standing = user ? await standingOnRig(store, user.id, rigId) : undefined;
  // Who is not signed in hears what a stranger hears.
  if (!standing || !may(standing.role, 'revision.read'))
    return refusal(404, 'no-such-rig', REFUSAL_SENTENCES['no-such-rig']);
  const known = REVISION_PARTS.find((each) => each === part);
  const isNumber = /^[1-9]\d{0,6}$/.test(number);
  const bytes =
    known && isNumber ? await revisionBytes(store, { rigId, number: Number(number), part: known }) : undefined;
  if (!bytes) return refusal(404, 'no-such-rig-revision', REFUSAL_SENTENCES['no-such-rig-revision']);
  return revisionAnswer(bytes);
}

/** A part of a revision as an answer. */
export const revisionAnswer = (bytes: Uint8Array<ArrayBuffer>): Response =>
  new Response(bytes, {
    headers: {
      'content-type': 'application/json; charset=utf-8',
      'content-encoding': 'deflate',
      // A revision never changes, but who may read it does.
      'cache-control': 'private, no-cache',
    },
  });
