import { counted } from './screens.ts';

export const ACCOUNT_WORDS = {
  title: 'Account',
  light: 'Day or dark',
  signedInAs: (name: string, email: string) => `${name}, ${email}`,
  unsaved: (edits: number) => ({
    what: `${counted(edits, 'edit')} on this device ${edits === 1 ? 'has' : 'have'} not reached the server.`,
    next: 'They stay here when you sign out, and go up when you sign in again on this device.',
  }),
  signOut: 'Sign out',
  signingOut: 'Signing out…',
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
  busy: 'Signing in…',
  other: 'No account yet?',
  otherLink: 'Make one',
} as const;

export const SIGN_UP_WORDS = {
  title: 'Make an account',
  name: 'Your name',
  nameHint: 'The crew sees it beside what you edit.',
  email: 'E-mail',
  password: 'Password',
  passwordHint: (least: number) => `At least ${least} characters. Four plain words are good.`,
  submit: 'Make the account',
  busy: 'Making it…',
  other: 'Have an account?',
  otherLink: 'Sign in',
} as const;

export const SIGNED_OUT = {
  what: 'You are not signed in.',
  next: 'Sign in to see this page.',
} as const;
