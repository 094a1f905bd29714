import { counted } from './screens.ts';

/** Locking units, so that no plan moves their addresses. */
export const LOCK_WORDS = {
  title: 'Locks',
  about:
    'A locked unit keeps its address: no plan moves it, and its address cell takes nothing, until somebody unlocks it. Everything else of it can be changed.',
  reason: 'Why, or who says so',
  reasonHint: 'Everybody reads it, such as: set and focused, Ona.',
  lock: (units: number) => (units === 0 ? 'Lock' : `Lock ${counted(units, 'unit')}`),
  unlock: (units: number) => (units === 0 ? 'Unlock' : `Unlock ${counted(units, 'unit')}`),
  lockOne: 'Lock its address',
  unlockOne: 'Unlock it',
  /** What stands there when the person has no name here. */
  somebody: 'locked',
  mark: 'locked',
  is: (reason: string) => `Locked: ${reason}. Plans leave its address where it is.`,
  held: 'held by locked units',
} as const;

/** `3 units are locked now.` */
export const locksSentence = (units: number, way: 'locked' | 'unlocked'): string =>
  way === 'locked'
    ? `${counted(units, 'unit')} ${units === 1 ? 'is' : 'are'} locked now: no plan moves ${units === 1 ? 'it' : 'them'}.`
    : `${counted(units, 'unit')} ${units === 1 ? 'is' : 'are'} unlocked now.`;
