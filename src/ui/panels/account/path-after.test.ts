import { expect, test } from 'vitest';
import { pathAfter, withReturn } from './path-after.ts';

test.each([
  ['', '/'],
  ['?then=%2Frigs%2Fabc', '/rigs/abc'],
  ['?then=%2Fjoin%2Fk3v9', '/join/k3v9'],
  ['?then=https%3A%2F%2Felsewhere.invalid', '/'],
  ['?then=%2F%2Felsewhere.invalid', '/'],
  ['?then=%2F%5Celsewhere.invalid', '/'],
  ['?then=%2F%09%2Felsewhere.invalid', '/'],
  ['?then=javascript%3Aalert(1)', '/'],
])('of %j goes to %j', (search, path) => {
  expect(pathAfter(search)).toBe(path);
});

test.each(['/', '/rigs/abc', '/join/k3v9', '/crews/a-b_c'])('comes back to %s', (path) => {
  expect(pathAfter(new URL(withReturn('/sign-in', path), 'http://here.invalid').search)).toBe(path);
});
