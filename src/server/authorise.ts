import type { IncomingMessage } from 'node:http';
import { may } from './access/policy.ts';
import { standingOnDraft, standingOnRig } from './access/standing.ts';
import type { Auth, Scheme } from './auth/create-auth.ts';
import type { Store } from './db/store.ts';
import { type ReachConfig, reachOf } from './http/reach.ts';
import type { Pass } from './sync/pass.ts';

export interface AuthoriseOptions {
  readonly store: Store;
  readonly auths: Readonly<Record<Scheme, Auth>>;
  readonly reach: ReachConfig;
}

type Answer = Pass | 'signed-out' | 'no-such-rig';

/** Answers the sync service who opened a socket and what they may do on the rig, by the same cookies and policy as the API. */
export function authoriseRigs(options: AuthoriseOptions) {
  return async (request: IncomingMessage, rigId: string): Promise<Answer> => {
    const user = await userOf(request, options);
    if (!user) return 'signed-out';
    const rig = await standingOnRig(options.store, user.id, rigId);
    if (!rig || !may(rig.role, 'rig.read')) return 'no-such-rig';
    return { user: user.id, name: user.name, role: may(rig.role, 'rig.write') ? 'writer' : 'reader' };
  };
}

/** The same for drafts of fixture types. One that was published or dropped is only read. */
export function authoriseDrafts(options: AuthoriseOptions) {
  return async (request: IncomingMessage, draftId: string): Promise<Answer> => {
    const user = await userOf(request, options);
    if (!user) return 'signed-out';
    const draft = await standingOnDraft(options.store, user.id, draftId);
    if (!draft || !may(draft.role, 'type.read')) return 'no-such-rig';
    const writes = draft.state === 'open' && may(draft.role, 'type.write');
    return { user: user.id, name: user.name, role: writes ? 'writer' : 'reader' };
  };
}

const userOf = (request: IncomingMessage, { auths, reach }: AuthoriseOptions) =>
  auths[reachOf(request, reach).scheme].userOf(request.headers.cookie);
