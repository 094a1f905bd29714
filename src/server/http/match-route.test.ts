import { describe, expect, it } from 'vitest';
import type { Route } from './api-request.ts';
import { matchRoute } from './match-route.ts';

const route = (method: 'GET' | 'POST', path: string): Route => ({ method, path, handle: async () => new Response() });
const routes = [route('GET', '/api/rigs/:rigId'), route('POST', '/api/rigs/:rigId'), route('GET', '/api/rigs/all')];

describe('matchRoute', () => {
  it('finds the route and its parts', () => {
    expect(matchRoute(routes, 'POST', '/api/rigs/r1')).toEqual({
      kind: 'route',
      route: routes[1],
      params: { rigId: 'r1' },
    });
    expect(matchRoute(routes, 'HEAD', '/api/rigs/r1')).toMatchObject({ kind: 'route', route: routes[0] });
  });

  it('tells a wrong method from a wrong address', () => {
    expect(matchRoute(routes, 'PUT', '/api/rigs/r1')).toEqual({ kind: 'wrong-method', allowed: ['GET', 'POST'] });
    for (const path of ['/api/rigs', '/api/rigs/', '/api/rigs/r1/', '/api/rigs/r1/x', '/API/rigs/r1', ''])
      expect(matchRoute(routes, 'GET', path)).toEqual({ kind: 'nothing' });
  });
});
