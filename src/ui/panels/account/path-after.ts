/**
 * Where to go after signing in: the `then` of the query when it is a path on this site, else the front page. A foreign
 * address in it would send a person, fresh from typing a password, to somebody else's page.
 */
export function pathAfter(search: string): string {
  const then = new URLSearchParams(search).get('then') ?? '/';
  return /^\/(?![/\\])[\w\-./~%?=&]*$/.test(then) ? then : '/';
}

/** The path of a page that asks to be signed in, and leads back. */
export function withReturn(page: '/sign-in' | '/sign-up', then: string): string {
  return then === '/' ? page : `${page}?then=${encodeURIComponent(then)}`;
}
