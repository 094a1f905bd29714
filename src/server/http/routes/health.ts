import type { Store } from '../../db/store.ts';
import type { Route } from '../api-request.ts';
import { json } from '../json.ts';

/** `GET /api/health`: whether this server and its store answer. */
export function healthRoute({ store, version }: { readonly store: Store; readonly version: string }): Route {
  return {
    method: 'GET',
    path: '/api/health',
    handle: async () => {
      try {
        await store.sql.query('select 1');
        return json(200, { status: 'ok', store: store.kind, version });
      } catch {
        // The log has heard of it from whoever needed the store; here it is the answer itself.
        return json(503, { status: 'store-unreachable', store: store.kind, version });
      }
    },
  };
}
