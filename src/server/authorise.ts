import type { IncomingMessage } from 'node:http';
import { may } from './access/policy.ts';
import { standingOnRig } from './access/standing.ts';
import type { Auth, Scheme } from './auth/create-auth.ts';
import type { Store } from './db/store.ts';
import { type ReachConfig, reachOf } from './http/reach.ts';
import type { Pass } from './sync/pass.ts';

export interface AuthoriseOptions {
  readonly store: Store;
  readonly auths: Readonly<Record<Scheme, Auth>>;
  readonly reach: ReachConfig;
}

/** Answers the sync service who opened a socket and what they may do on the rig, by the same cookies and policy as the API. */
export function authoriseBy({ store, auths, reach }: AuthoriseOptions) {
  return async (request: IncomingMessage, rigId: string): Promise<Pass | 'signed-out' | 'no-such-rig'> => {
    const user = await auths[reachOf(request, reach).scheme].userOf(request.headers.cookie);
    if (!user) return 'signed-out';
    const rig = await standingOnRig(store, user.id, rigId);
    if (!rig || !may(rig.role, 'rig.read')) return 'no-such-rig';
    return { user: user.id, name: user.name, role: may(rig.role, 'rig.write') ? 'writer' : 'reader' };
  };
}
