import { expect, it } from 'vitest';
import type { SyncState } from './sync/sync-state.ts';
import { saveStatus } from './sync-link.ts';

const LIVE: SyncState = {
  link: 'live',
  trouble: undefined,
  role: 'writer',
  save: 'saved',
  unsaved: 0,
  copyTrouble: undefined,
  filled: true,
  people: [],
  me: 1,
  seq: 9,
};

const said = (state: Partial<SyncState>, role: 'writer' | 'reader' = 'writer') => {
  const { state: word, detail } = saveStatus({ ...LIVE, ...state }, role, 'this rig is not yours any more');
  return detail === '' ? word : `${word}: ${detail}`;
};

it('says saved only of what the server has, and plainly where the rest is', () => {
  expect(said({})).toBe('saved');
  expect(said({ save: 'saving', unsaved: 1 })).toBe('saving');
  expect(said({ link: 'offline', save: 'on-this-device', unsaved: 1 })).toBe('on-device: 1 edit waits for the network');
  expect(said({ link: 'offline', save: 'only-in-this-page', unsaved: 2 })).toBe(
    'refused: 2 edits only in this page: keep it open',
  );
  expect(said({ link: 'offline' })).toBe('saved: no connection');
  expect(said({ copyTrouble: 'missing' })).toBe('saved: this device keeps no copy');
});

it('says nothing of saving before what waits on this device is read, or while there is no rig to save', () => {
  expect(said({ link: 'loading', filled: false })).toBe('opening');
  expect(said({ link: 'connecting', filled: false })).toBe('opening');
  expect(said({ link: 'offline', filled: false })).toBe('opening: no connection');
  expect(said({ link: 'connecting' })).toBe('saved');
});

it('tells a reader, and never calls saved what waits for something the person has to do', () => {
  expect(said({ role: 'reader' }, 'reader')).toBe('read-only');
  expect(said({ link: 'stopped', trouble: 'signed-out', save: 'on-this-device', unsaved: 3 })).toBe(
    'refused: 3 edits wait on this device: sign in again',
  );
  expect(said({ trouble: 'too-large', save: 'on-this-device', unsaved: 1 })).toBe(
    'refused: one edit is too large for the server: undo it',
  );
  expect(said({ link: 'stopped', trouble: 'no-such-rig' })).toBe('refused: this rig is not yours any more');
});
