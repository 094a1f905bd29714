/** The name of the tool, as a person reads it. */
export const PRODUCT = 'Rigledger';

export const SEVERITY_WORDS = {
  blocker: { one: 'blocker', many: 'blockers' },
  caution: { one: 'caution', many: 'cautions' },
  note: { one: 'note', many: 'notes' },
} as const;

/** Where the edits of a screen stand. */
export const SAVE_WORDS = {
  saved: 'saved',
  saving: 'saving',
  'on-device': 'on this device only',
  'read-only': 'read only',
  refused: 'not saved',
} as const;

export const KIT_WORDS = {
  skip: 'Skip to the main part',
} as const;
