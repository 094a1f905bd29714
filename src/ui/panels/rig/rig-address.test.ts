import { expect, test } from 'vitest';
import { RIG_PAGES, rigAddress, rigPath } from './rig-address.ts';

test.each(RIG_PAGES)('reads back the path of %s', (page) => {
  expect(rigAddress(rigPath('k3v9', page))).toEqual({ rigId: 'k3v9', page });
});

test.each([
  ['/rigs/k3v9/', 'sheet'],
  ['/rigs/k3v9/elsewhere', undefined],
  ['/rigs/k3v9/lists-in/more', undefined],
])('of %s makes %s', (path, page) => {
  expect(rigAddress(path)).toEqual({ rigId: 'k3v9', page });
});
