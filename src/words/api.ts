/** What the server says when a request never got as far as a rule of ours. */
export const API_SENTENCES = {
  broken:
    'Something broke on the server; nothing was changed. Try again. If it happens again, look into the log of the server.',
  noSuchDoor: 'There is nothing at this address. Check the address.',
  unreadableInput: (field: string, why: string) => `${field === '' ? 'The request' : field}: ${why}`,
} as const;
