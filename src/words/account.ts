export const ACCOUNT_WORDS = {
  title: 'Account',
  light: 'Light',
  signedInAs: (name: string, email: string) => `${name}, ${email}`,
  signOut: 'Sign out',
  signingOut: 'Signing out …',
  signOutFailed: {
    what: 'You are still signed in.',
    next: 'The server does not answer. Check the network, then sign out again.',
  },
} as const;

export const SIGN_IN_WORDS = {
  title: 'Sign in',
  email: 'E-mail',
  password: 'Password',
  submit: 'Sign in',
  busy: 'Signing in …',
  other: 'No account yet?',
  otherLink: 'Make one',
} as const;

export const SIGN_UP_WORDS = {
  title: 'Make an account',
  name: 'Your name',
  nameHint: 'The crew sees it beside what you edit.',
  email: 'E-mail',
  password: 'Password',
  passwordHint: 'At least 8 characters. Four plain words are good.',
  submit: 'Make the account',
  busy: 'Making it …',
  other: 'Have an account?',
  otherLink: 'Sign in',
} as const;

/** What the account service's refusals say, by its code. */
export const ACCOUNT_REFUSALS: Readonly<Record<string, { readonly what: string; readonly next: string }>> = {
  INVALID_EMAIL_OR_PASSWORD: {
    what: 'E-mail and password do not go together.',
    next: 'Check both. Capitals count in the password.',
  },
  INVALID_EMAIL: { what: 'This is not an e-mail address.', next: 'It looks like name@example.org.' },
  USER_ALREADY_EXISTS: { what: 'There is an account with this e-mail already.', next: 'Sign in with it instead.' },
  USER_ALREADY_EXISTS_USE_ANOTHER_EMAIL: {
    what: 'There is an account with this e-mail already.',
    next: 'Sign in with it instead.',
  },
  PASSWORD_TOO_SHORT: { what: 'This password is too short.', next: 'Use at least 8 characters.' },
  PASSWORD_TOO_LONG: { what: 'This password is too long.', next: 'Use at most 128 characters.' },
  TOO_MANY_REQUESTS: { what: 'Too many tries.', next: 'Wait a minute, then try again.' },
};

export const ACCOUNT_BROKEN = {
  what: 'That did not work.',
  next: 'Check what you typed and try again. If it stays so, tell whoever runs this installation.',
} as const;

export const SIGNED_OUT = {
  what: 'You are not signed in.',
  next: 'Sign in to see this page.',
} as const;
