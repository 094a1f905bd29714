import { REFUSAL_SENTENCES } from '#words/refusals.ts';
import { may } from '../../access/policy.ts';
import { standingOnRig } from '../../access/standing.ts';
import { readMoment } from '../../tasks/history/read-moment.ts';
import type { TaskContext } from '../../tasks/task-context.ts';
import type { ApiRequest, Route } from '../api-request.ts';
import { refusal } from '../json.ts';

/** `GET /api/rigs/:rigId/moments/:seq`: a rig as it was after a step of its history, as the text of a frozen rig, deflated. */
export function momentRoute(options: { readonly tasks: TaskContext }): Route {
  return {
    method: 'GET',
    path: '/api/rigs/:rigId/moments/:seq',
    handle: (request) => sendMoment(request, options),
  };
}

async function sendMoment(request: ApiRequest, { tasks }: { readonly tasks: TaskContext }): Promise<Response> {
  const { rigId = '', seq = '' } = request.params;
  const user = await request.user();
  const standing = user ? await standingOnRig(tasks.store, user.id, rigId) : undefined;
  // Who is not signed in hears what a stranger hears.
  if (!standing || !may(standing.role, 'history.read'))
    return refusal(404, 'no-such-rig', REFUSAL_SENTENCES['no-such-rig']);
  if (!/^[1-9]\d{0,14}$/.test(seq)) return refusal(404, 'no-such-moment', REFUSAL_SENTENCES['no-such-moment']);
  const moment = await readMoment(tasks, rigId, Number(seq));
  if (!moment.ok) {
    const status = moment.error === 'rig-too-large' ? 413 : 404;
    return refusal(status, moment.error, REFUSAL_SENTENCES[moment.error]);
  }
  return new Response(moment.value, {
    headers: {
      'content-type': 'application/json; charset=utf-8',
      'content-encoding': 'deflate',
      // A moment never changes, but who may look at it does.
      'cache-control': 'private, no-cache',
    },
  });
}
