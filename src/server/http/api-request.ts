import type { Result } from '#base/result.ts';
import type { Me } from '#wire/me.ts';
import type { Auth } from '../auth/create-auth.ts';
import type { Reach } from './reach.ts';

/** A request to one of our routes: read whole unless it brings a file, from a page of ours if it changes anything. */
export interface ApiRequest {
  readonly method: 'GET' | 'POST';
  readonly url: URL;
  /** What the path's `:name` parts are. */
  readonly params: Readonly<Record<string, string>>;
  readonly body: string | undefined;
  readonly contentType: string;
  /** Reads the file that a request to a route of files brings, or answers why it was not read. To be called once. */
  file(limits: { readonly bytes: number; readonly ms: number }): Promise<Result<Uint8Array<ArrayBuffer>, Response>>;
  readonly cookie: string | undefined;
  readonly reach: Reach;
  /** Accounts and sessions, by the cookies of this request's scheme. */
  readonly auth: Auth;
  /** Who is asking; looked up once. */
  user(): Promise<Me['user']>;
}

/** One address of the API. `path` may have `:name` parts; `*` at its end takes the rest. */
export interface Route {
  readonly method: 'GET' | 'POST';
  readonly path: string;
  /** `file`: the body is not JSON and not read beforehand; `handle` decides whether it is read at all. */
  readonly takes?: 'file';
  handle(request: ApiRequest): Promise<Response>;
}
