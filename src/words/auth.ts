/** What signing up and in says when it is refused, by the code of the refusal. */
export const AUTH_SENTENCES: Readonly<Record<string, string>> = {
  INVALID_EMAIL_OR_PASSWORD: 'E-mail address and password do not belong together. Check both and try again.',
  USER_ALREADY_EXISTS: 'There is an account with this e-mail address already. Sign in instead.',
  USER_ALREADY_EXISTS_USE_ANOTHER_EMAIL: 'There is an account with this e-mail address already. Sign in instead.',
  // Two sign-ups with one address at the same moment: the second finds it taken only when it writes.
  FAILED_TO_CREATE_USER: 'There is an account with this e-mail address already. Sign in instead.',
  PASSWORD_TOO_SHORT: 'This password is too short. Choose a longer one.',
  PASSWORD_TOO_LONG: 'This password is too long. Choose a shorter one.',
  INVALID_EMAIL: 'This is not an e-mail address. Check it.',
};

export const TOO_MANY_ATTEMPTS = 'Too many attempts from this place. Wait a minute, then try again.';
