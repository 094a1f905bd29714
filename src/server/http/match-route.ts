import type { Route } from './api-request.ts';

/** What an address leads to: a route, the methods it would take instead, or nothing. */
export type Match =
  | { readonly kind: 'route'; readonly route: Route; readonly params: Readonly<Record<string, string>> }
  | { readonly kind: 'wrong-method'; readonly allowed: readonly string[] }
  | { readonly kind: 'nothing' };

export function matchRoute(routes: readonly Route[], method: string, pathname: string): Match {
  const here = routes.flatMap((route) => {
    const params = paramsOf(route.path, pathname);
    return params ? [{ route, params }] : [];
  });
  // A HEAD is a GET whose body is not sent.
  const wanted = method === 'HEAD' ? 'GET' : method;
  const found = here.find(({ route }) => route.method === wanted);
  if (found) return { kind: 'route', ...found };
  if (here.length > 0) return { kind: 'wrong-method', allowed: here.map(({ route }) => route.method) };
  return { kind: 'nothing' };
}

function paramsOf(pattern: string, pathname: string): Record<string, string> | undefined {
  const wanted = pattern.split('/');
  const given = pathname.split('/');
  if (wanted.length !== given.length) return undefined;
  const params: Record<string, string> = {};
  for (const [index, part] of wanted.entries()) {
    const text = decoded(given[index] ?? '');
    if (text === undefined) return undefined;
    if (part.startsWith(':') && text !== '') params[part.slice(1)] = text;
    else if (part !== text) return undefined;
  }
  return params;
}

function decoded(part: string): string | undefined {
  try {
    return decodeURIComponent(part);
  } catch {
    // A percent sign that means nothing: no address has one.
    return undefined;
  }
}
